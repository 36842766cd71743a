/** The drawing that belongs to an answer; nothing where words say it all. */
import type { ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import { BaseDrawing } from './base-drawing'
import { BulbDrawing } from './bulb-drawing'
import { GetterHolderDrawing, GetterPlaceDrawing } from './getter-drawing'
import { PlateDrawing } from './plate-drawing'

const DRAWINGS: Readonly<Partial<Record<ObservationKey, typeof BulbDrawing>>> = {
  bulb: BulbDrawing,
  base: BaseDrawing,
  plates: PlateDrawing,
  getterPlace: GetterPlaceDrawing,
  getterShape: GetterHolderDrawing,
}

export const isDrawn = (observation: ObservationKey): boolean => DRAWINGS[observation] !== undefined

type Shown = { readonly observation: ObservationKey; readonly choice: string; readonly title?: string }

export function ChoiceDrawing({ observation, choice, title }: Shown) {
  const Found = DRAWINGS[observation]
  return Found ? <Found choice={choice} title={title} /> : null
}
