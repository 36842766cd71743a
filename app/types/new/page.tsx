import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { mayKeepTypes } from '@/lib/workflow/shop/keep-own-type'
import { NotYourTypes } from '../not-your-types'
import { OwnTypeForm } from '../own-type-form'
import { startingSheet } from '../own-type-values'
import { typeKit } from '../type-kit'
import { StartLike } from './start-like'

export const metadata: Metadata = { title: 'Write down a type' }

const asked = (value: string | string[] | undefined): string => (typeof value === 'string' ? value.slice(0, 40) : '')

export default async function NewTypePage({ searchParams }: PageProps<'/types/new'>) {
  const { actor, shop } = await requireUser()
  const query = await searchParams
  const [like, designation] = [asked(query.like), asked(query.designation)]
  const { values, from } = startingSheet({ like, designation, catalogue: shop })
  const { tube } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Write down a {tube} type</h1>
      {mayKeepTypes({ actor }) ? (
        <>
          <StartLike like={like} designation={designation} from={from} catalogue={shop} />
          <OwnTypeForm
            key={`${like} ${designation}`}
            kit={typeKit(shop)}
            values={{ ...values, once: onceMark() }}
            save="Save the type"
          />
        </>
      ) : (
        <NotYourTypes />
      )}
    </Shell>
  )
}
