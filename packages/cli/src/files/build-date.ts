import { UsageError } from '../usage-error.ts'

/**
 * The date that files carry: that of `SOURCE_DATE_EPOCH` (seconds since 1970, as reproducible-builds.org specifies it), else
 * none, so that the same lesson always gives the same bytes. Throws `UsageError` when the variable holds no such number.
 */
export function buildDate(env: Readonly<Record<string, string | undefined>>): Date | null {
  const given = env.SOURCE_DATE_EPOCH
  if (given === undefined || given === '') return null
  const date = new Date(Number(given) * 1000)
  if (/^\d+$/.test(given) && !Number.isNaN(date.getTime())) return date
  throw new UsageError(
    `SOURCE_DATE_EPOCH is "${given}", not a number of seconds`,
    'set it to whole seconds since 1970, or unset it',
  )
}
