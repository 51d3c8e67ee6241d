declare module 'hyphen/*' {
  const patterns: { readonly hyphenateSync: (text: string) => string }
  export default patterns
}
