/** Words of the stock list. */
export const ageText = (days: number): string => (days === 0 ? 'today' : days === 1 ? '1 day ago' : `${days} days ago`)
