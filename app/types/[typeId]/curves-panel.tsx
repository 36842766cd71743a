/** The curves of a type, what they come from, and how they meet its printed rows. */
import { PlateCurves } from '@/app/_components/plot/plate-curves'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { comparedRows } from '@/lib/domain/model/row-comparison'
import type { Section, TypeModel } from '@/lib/domain/model/type-model'
import type { PlateRating } from '@/lib/domain/plot/plate-sheet'
import { plotFaultText } from '@/lib/domain/plot/plot-text'
import { typeSheet } from '@/lib/domain/plot/type-sheet'
import type { HandbookRatings, HandbookType } from '@/lib/domain/tube/handbook-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { ratingsOf } from '@/lib/domain/tube/tube-ratings'
import { capital, type Words } from '@/lib/domain/words'

type Props = { readonly type: HandbookType; readonly catalogue: TubeCatalogue; readonly words: Words }

export function CurvesPanel({ type, catalogue, words }: Props) {
  const second = catalogueModel(type.id, catalogue, 'second').ok
  return (
    <section className="panel stack">
      <h2>{capital(words.plate)} curves</h2>
      <SectionCurves type={type} section="first" catalogue={catalogue} words={words} />
      {second && <SectionCurves type={type} section="second" catalogue={catalogue} words={words} />}
    </section>
  )
}

/** The lowest of the variants: what the curves show as too hot is too hot for none of them by mistake. */
function lowestRatings(type: HandbookType): HandbookRatings | null {
  const all = type.variants.flatMap((variant) => ratingsOf(type, variant) ?? [])
  const watts = ({ limits }: HandbookRatings) => limits.plateWatts?.[0] ?? Number.POSITIVE_INFINITY
  return all.toSorted((a, b) => watts(a) - watts(b))[0] ?? null
}

function plateRating(ratings: HandbookRatings | null): PlateRating | null {
  const watts = ratings?.limits.plateWatts?.[0]
  return watts === undefined ? null : { watts, system: ratings?.system ?? null }
}

const SECOND = { 'triode-pentode': 'triode section', 'twin-triode': 'second unit' } as Readonly<Record<string, string>>

function SectionCurves({ type, section, catalogue, words }: Props & { readonly section: Section }) {
  const ratings = section === 'first' ? lowestRatings(type) : (type.otherSection ?? null)
  const name = type.variants[0]?.designations[0] ?? type.id
  const sheet = typeSheet({
    typeId: type.id,
    designation: section === 'first' ? name : `${name} ${SECOND[type.tubeClass] ?? 'second section'}`,
    section,
    rating: plateRating(ratings),
    ratedVolts: ratings?.limits.plateVolts?.[0] ?? null,
    catalogue,
  })
  const model = catalogueModel(type.id, catalogue, section)
  if (!sheet.ok || !model.ok) return <p className="soft">{sheet.ok ? '' : plotFaultText(sheet.fault, words)}</p>
  return (
    <>
      <PlateCurves sheet={sheet.value} words={words} />
      <Facts model={model.value} words={words} />
      <Comparison type={type} model={model.value} words={words} />
    </>
  )
}

const FORMS = {
  pentode:
    'Cathode current by the three-halves law with a soft cutoff, shared between plate and screen as their voltages: five parameters.',
  triode: 'Koren’s five parameters (“Improved vacuum tube models for SPICE simulations”, 1996).',
} as const

function Facts({
  model: { parameters, standIn, curvesOf, rows, movedTo, cutoffKnown },
  words,
}: {
  readonly model: TypeModel
  readonly words: Words
}) {
  const fitted = `${rows} printed ${rows === 1 ? 'row' : 'rows'}`
  return (
    <dl className="facts">
      <dt>Form</dt>
      <dd>{FORMS[parameters.kind].replace('plate', words.plate)}</dd>
      <dt>Come from</dt>
      <dd>
        {standIn === 'own' ? `a fit to ${fitted} of its own` : `${curvesOf}, fitted to ${fitted} of that`}
        {movedTo ? `, moved to ${movedTo} of its own` : ''}
      </dd>
      <dt>Cutoff</dt>
      <dd>{cutoffKnown ? 'fixed by printed rows' : 'not fixed: cold idle points carry a wider band'}</dd>
    </dl>
  )
}

function Comparison({
  type,
  model,
  words,
}: {
  readonly type: HandbookType
  readonly model: TypeModel
  readonly words: Words
}) {
  const rows = comparedRows(type, model)
  if (rows.length === 0) return null
  return (
    <div className="table-scroll">
      <table className="sheet">
        <caption>
          {capital(words.plate)} current of one {words.tube}, as printed and by the curves. {comparisonNote(model)}
        </caption>
        <thead>
          <tr>
            <th>Operating point</th>
            <th className="num">Printed, mA</th>
            <th className="num">By the curves, mA</th>
            <th className="num">Off</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ row, printedMilliamps, modelMilliamps }) => (
            <tr key={row.label}>
              <th scope="row">{row.label}</th>
              <td className="num">{Number(printedMilliamps.toPrecision(3))}</td>
              <td className="num">{Number(modelMilliamps.toPrecision(3))}</td>
              <td className="num">{offText(modelMilliamps / printedMilliamps - 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function comparisonNote({ standIn, movedTo, curvesOf }: TypeModel): string {
  if (movedTo) return 'The curves were moved to these rows, so this shows how they follow them, not how they foretell.'
  if (standIn !== 'own') return `The curves were fitted to rows of the ${curvesOf}, not to these.`
  return 'The curves were fitted to some of these rows, so this shows how they follow them, not how they foretell.'
}

const offText = (share: number): string => `${share < 0 ? '−' : '+'}${Math.abs(100 * share).toFixed(1)} %`
