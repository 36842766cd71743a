import Link from 'next/link'
import { ActForm } from '@/app/_components/form/act-form'
import type { KeptOwnType } from '@/lib/store/own-type'
import { takeTypeAgain, withdrawType } from '../actions'

export function OwnActions({ type: { id, version, active }, formKey }: { type: KeptOwnType; formKey: string }) {
  const values = { id, version: String(version) }
  return (
    <section className="panel stack no-print">
      <h2>This shop’s own type</h2>
      <p className="row">
        <Link className="button quiet" href={`/types/${id}/edit`}>
          Correct it
        </Link>
      </p>
      {active ? (
        <ActForm
          key={`withdraw ${formKey}`}
          action={withdrawType}
          values={values}
          quiet
          fold={{
            summary: 'Withdraw it',
            note: 'It is then looked up no more: sheets, stock and readings that name it have no ratings. It can be taken into use again.',
          }}
        >
          Withdraw
        </ActForm>
      ) : (
        <ActForm key={`again ${formKey}`} action={takeTypeAgain} values={values}>
          Take into use again
        </ActForm>
      )}
    </section>
  )
}
