/** Where a lesson of a book starts, for its contents. */
export interface LessonStart {
  readonly title: string
  readonly subtitle: string | null
  readonly anchor: string
  readonly part: string | null
  readonly page: string
  /** Whether it stands apart from the part before it, as the answers do. */
  readonly apart: boolean
}
