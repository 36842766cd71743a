/** What a file of another program may have at most. */
export const MOST_FILE_BYTES = 40_000_000
export const MOST_TABLE_ROWS = 200_000
