import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { findOwnType } from '@/lib/store/own-type'
import { mayKeepTypes } from '@/lib/workflow/shop/keep-own-type'
import { NotYourTypes } from '../../not-your-types'
import { OwnTypeForm } from '../../own-type-form'
import { keptValues } from '../../own-type-values'
import { typeKit } from '../../type-kit'

export const metadata: Metadata = { title: 'Correct a type' }

export default async function EditTypePage({ params }: PageProps<'/types/[typeId]/edit'>) {
  const { actor, shop } = await requireUser()
  const { typeId } = await params
  const type = await findOwnType(typeId)
  if (!type) notFound()
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Correct {type.entry.designation}</h1>
        <Link href={`/types/${typeId}`}>Back to its card</Link>
      </div>
      {mayKeepTypes({ actor }) ? (
        <OwnTypeForm
          kit={typeKit(shop)}
          values={keptValues(type)}
          save={type.active ? 'Save corrections' : 'Save and take into use again'}
        />
      ) : (
        <NotYourTypes />
      )}
    </Shell>
  )
}
