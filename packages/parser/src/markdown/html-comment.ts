/** Whether HTML is nothing but a comment: in Markdown that is a note to the writer, which is not printed. */
export function isComment(html: string): boolean {
  const text = html.trim()
  return text.startsWith('<!--') && text.indexOf('-->', 4) === text.length - 3
}
