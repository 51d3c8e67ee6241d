/** The containers of the language. */
export const CONTAINERS = ['teacher', 'answer', 'care'] as const
