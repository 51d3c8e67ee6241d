/** Ends a `switch` over a union: compiles only when every case is handled, throws when data break their type. */
export function assertNever(value: never): never {
  throw new Error(`unexpected value: ${JSON.stringify(value)}`)
}
