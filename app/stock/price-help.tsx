'use client'
/** Beside the box of a price: what the shop asks for its neighbours, looked up without losing what is typed. */
import type { FormValues } from '@/app/_components/form/form-state'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { PriceList } from './price-list'
import { shownPrices } from './price-values'

export function PriceHelp({ form, start = {} }: { readonly form: ActionForm; readonly start?: FormValues }) {
  const shown = shownPrices(form.state.values) ?? shownPrices(start)
  return (
    <section className="wide stack" aria-label="What to ask">
      <div className="row">
        <button type="submit" className="button quiet" formNoValidate name="edit" value="prices">
          Look up prices
        </button>
        <span className="soft small">What the shop asks beside it. Nothing is saved by it.</span>
      </div>
      <div aria-live="polite">
        {shown && (
          <>
            <p className="soft">{shown.about}</p>
            <PriceList lines={shown.lines} />
          </>
        )}
      </div>
    </section>
  )
}
