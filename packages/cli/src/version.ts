/** The version of Barwise, as `--version` prints it. */
export const VERSION = '0.1.0'
