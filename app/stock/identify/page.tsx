import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { identify } from '@/lib/domain/identify/identify'
import { NOT_GENUINE } from '@/lib/domain/identify/identify-text'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listMakers } from '@/lib/store/maker'
import { AnswerPanel, MarksPanel } from './answer-panel'
import styles from './identify.module.css'
import { IdentifyForm } from './identify-form'
import { LeadBar } from './lead-bar'
import { hasSeen, PLACE, seenOf } from './seen-query'

export const metadata: Metadata = { title: 'What is it?' }

export default async function IdentifyPage({ searchParams }: PageProps<'/stock/identify'>) {
  const { actor, shop } = await requireUser()
  const seen = seenOf(await searchParams)
  const thisYear = new Date().getUTCFullYear()
  const found = identify(seen, { catalogue: shop, makers: await listMakers(), thisYear })
  const words = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>What {words.tube} is it?</h1>
        <div className="row no-print">
          {hasSeen(seen) && (
            <a className="button quiet" href={PLACE}>
              Start anew
            </a>
          )}
          <Link className="button plain" href="/stock">
            Back to the stock
          </Link>
        </div>
      </div>
      <p className="soft">Tell what you see, in any order, and leave out what you do not know. {NOT_GENUINE}</p>
      <div className={styles.sides}>
        <AnswerPanel found={found} seen={seen} words={words} catalogue={shop} />
        <IdentifyForm seen={seen} next={found.next?.key ?? null} words={words} />
        <MarksPanel found={found} words={words} />
        <LeadBar found={found} seen={seen} words={words} />
      </div>
    </Shell>
  )
}
