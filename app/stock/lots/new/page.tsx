import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { stockKit } from '../../tube-schema'
import { TypeLists } from '../../type-lists'
import { LotForm } from '../lot-form'
import { LOT_BLANK } from '../lot-schema'

export const metadata: Metadata = { title: 'New lot' }

export default async function NewLotPage() {
  const { actor, shop } = await requireUser()
  return (
    <Shell shop={shop} actor={actor}>
      <h1>New lot</h1>
      <TypeLists testers={[]} catalogue={shop} />
      <section className="panel">
        <LotForm kit={stockKit(shop)} values={{ ...LOT_BLANK, once: onceMark() }} />
      </section>
    </Shell>
  )
}
