/** What is known of a tube beyond type, condition and price; what is not noted is not listed. */
import Link from 'next/link'
import { Fragment } from 'react'
import { formatDay } from '@/lib/domain/calendar'
import { type Whereabouts, whereaboutsWord } from '@/lib/domain/stock/tube'
import { furtherShown, type TubeFurther } from '@/lib/domain/stock/tube-further'
import type { SetMember } from '@/lib/store/tube-set'

type Props = {
  readonly tubeId: string
  readonly further: TubeFurther
  readonly members: readonly SetMember[]
  readonly locale: string
}

export function FurtherFacts({ tubeId, further, members, locale }: Props) {
  const facts = [...furtherShown({ ...further, setName: '' }, (day) => formatDay(day, locale))].filter(
    ([, text]) => text,
  )
  const others = members.filter(({ id }) => id !== tubeId)
  return (
    <>
      {facts.map(([label, text]) => (
        <Fragment key={label}>
          <dt>{label}</dt>
          <dd>{text}</dd>
        </Fragment>
      ))}
      {further.setName && (
        <>
          <dt>Kept with set</dt>
          <dd>
            {further.setName}
            {others.length === 0 && ', alone in it'}
            {others.map(({ id, mark, whereabouts }) => (
              <Fragment key={id}>
                , <Link href={`/stock/${id}`}>{mark}</Link>
                {whereabouts !== 'in-stock' && ` (${whereaboutsWord(whereabouts as Whereabouts)})`}
              </Fragment>
            ))}
          </dd>
        </>
      )}
    </>
  )
}
