import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone } from '@/lib/domain/calendar'
import { mayDo } from '@/lib/domain/person/role'
import { SEEN_NAMES, type SeenName } from '@/lib/domain/stock/tube-further'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listSetNames } from '@/lib/store/tube-set'
import { listTubeTesters } from '@/lib/store/tube-tester'
import { furtherValues } from '../further-schema'
import { blankTest } from '../test-schema'
import { SHARED_BLANK, stockKit } from '../tube-schema'
import { TypeLists } from '../type-lists'
import { NewTubeForm } from './new-tube-form'

export const metadata: Metadata = { title: 'Take one in' }

type Query = Readonly<Record<string, string | string[] | undefined>>

/** From the identification: what was found and seen. Anything else in the address is left alone. */
function foundOf(query: Query) {
  const given = (name: string, longest: number): string => {
    const value = query[name]
    return (typeof value === 'string' ? value : '').slice(0, longest)
  }
  const seen = Object.fromEntries(SEEN_NAMES.map((name) => [name, given(name, 200)])) as Record<SeenName, string>
  return { ...seen, designation: given('designation', 40), construction: given('construction', 300) }
}

export default async function NewTubePage({ searchParams }: PageProps<'/stock/new'>) {
  const { actor, shop } = await requireUser()
  const found = foundOf(await searchParams)
  const [testers, sets] = await Promise.all([listTubeTesters(), listSetNames()])
  const today = dayInZone(new Date(), shop.timeZone)
  const values = {
    mark: '',
    ...SHARED_BLANK,
    ...furtherValues(),
    ...found,
    ...blankTest({ today, instrument: testers[0] ?? '' }),
    once: onceMark(),
  }
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Take in one {wordsFor(shop.words).tube}</h1>
      <TypeLists testers={testers} catalogue={shop} sets={sets} />
      <NewTubeForm
        kit={stockKit(shop)}
        values={values}
        withTest={mayDo(actor, 'bench-work')}
        isFound={SEEN_NAMES.some((name) => found[name] !== '')}
      />
    </Shell>
  )
}
