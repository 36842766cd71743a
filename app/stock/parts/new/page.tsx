import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { stockKit } from '../../tube-schema'
import { PartForm } from '../part-form'
import { PART_BLANK } from '../part-schema'

export const metadata: Metadata = { title: 'New part' }

export default async function NewPartPage() {
  const { actor, shop } = await requireUser()
  return (
    <Shell shop={shop} actor={actor}>
      <h1>New part</h1>
      <section className="panel">
        <PartForm kit={stockKit(shop)} values={{ ...PART_BLANK, once: onceMark() }} />
      </section>
    </Shell>
  )
}
