'use client'
import { useEffect, useState } from 'react'
import { TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { capital, type Words } from '@/lib/domain/words'

const LIST_ID = 'tube-types'

export const TypeList = ({ designations }: { designations: readonly string[] }) => (
  <datalist id={LIST_ID}>
    {designations.map((designation) => (
      <option key={designation} value={designation} />
    ))}
  </datalist>
)

/** The handbook is fetched only once there is a type to look up. */
async function isUnknown(type: string, catalogue: TubeCatalogue): Promise<boolean> {
  if (type === '') return false
  const { findTubeType } = await import('@/lib/domain/tube/find-tube-type')
  return findTubeType(type, catalogue) === null
}

/** Null while the handbook knows it. */
function useUnknown(answered: string, attempt: number, catalogue: TubeCatalogue) {
  const [type, setType] = useState(answered)
  const [unknown, setUnknown] = useState<string | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: an answer may put another socket's type into this box
  useEffect(() => setType(answered), [answered, attempt])
  useEffect(() => {
    let wanted = true
    void isUnknown(type, catalogue).then((is) => wanted && setUnknown(is ? type : null))
    return () => {
      wanted = false
    }
  }, [type, catalogue])
  return { unknown, look: setType }
}

/** Any type may be written; one that is not known is said to be so. */
type TypeFieldProps = { form: ActionForm; name: string; words: Words; catalogue: TubeCatalogue }

export function TypeField({ form, name, words, catalogue }: TypeFieldProps) {
  const { unknown, look } = useUnknown(form.valueOf(name).trim(), form.state.attempt, catalogue)
  const hint =
    unknown === null
      ? undefined
      : `${unknown} is not in the handbook, nor among the shop’s own types: no ratings known. Its sheet can be written down under ${capital(words.tube)} data.`
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only listens for the box inside being left
    <div onBlur={({ target }) => target instanceof HTMLInputElement && look(target.value.trim())}>
      <TextField form={form} name={name} label="Type fitted" list={LIST_ID} hint={hint} />
    </div>
  )
}
