/** "6 l6-gc" and "6L6GC" are one designation. */
export const foldedDesignation = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\-–—.()]+/g, '')
