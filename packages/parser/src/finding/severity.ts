/** Error: cannot be read or played, or is wrong beyond doubt. Warning: a colleague would raise it. Note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note'
