/** What the sheet of a type starts from: a kept type, a known one, or nothing but a name. */
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { ownTypeStart } from '@/lib/domain/tube/own/own-type-start'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import type { KeptOwnType } from '@/lib/store/own-type'
import { entryValues } from './own-type-schema'

export const keptValues = ({ id, version, entry }: KeptOwnType): FormValues =>
  sheetValues({ id, version: String(version), ...entryValues(entry) })

type Asked = { readonly like: string; readonly designation: string; readonly catalogue: TubeCatalogue }

export type StartingSheet = { readonly values: FormValues; readonly from: TubeVariant | null }

export function startingSheet({ like, designation, catalogue }: Asked): StartingSheet {
  const from = findTubeType(like, catalogue)
  const entry = from ? { ...ownTypeStart(from, catalogue), designation } : { designation }
  return { values: { id: '', version: '0', ...entryValues(entry) }, from }
}
