import type { Quote } from '@/lib/domain/quote/quote'
import type { IssuedPaper } from '@/lib/store/paper'

/** The paper frozen when this revision went out; a draft has none. */
export const paperOf = ({ number, revision }: Quote, papers: readonly IssuedPaper[]): IssuedPaper | null =>
  papers.find((paper) => paper.kind === 'quote' && paper.number === `${number} rev. ${revision}`) ?? null
