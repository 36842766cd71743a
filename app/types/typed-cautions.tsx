'use client'
/** What is odd about the figures as they stand in the boxes, said while they are typed. It refuses nothing. */
import { useEffect, useState } from 'react'
import { typedValues } from '@/app/_components/form/form-values'
import { readValues } from '@/app/_components/form/read-form'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ownTypeCautions } from '@/lib/domain/tube/own/own-type-cautions'
import { ownTypeCautionText } from '@/lib/domain/tube/own/own-type-text'
import { type WordSet, wordsFor } from '@/lib/domain/words'
import { CautionList } from './caution-list'
import type { ownTypeSchema } from './own-type-schema'

type Props = {
  readonly form: ActionForm
  readonly schema: ReturnType<typeof ownTypeSchema>
  readonly words: WordSet
}

export function TypedCautions({ form, schema, words }: Props) {
  const [sentences, setSentences] = useState<readonly string[]>([])
  const { ref } = form.formProps
  // biome-ignore lint/correctness/useExhaustiveDependencies: an answer may put other figures into the boxes
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const look = () => {
      const read = readValues(schema, typedValues(new FormData(element)))
      // An unfinished sheet has its own sentences beside its boxes.
      if (read.ok)
        setSentences(ownTypeCautions(read.value.entry).map((one) => ownTypeCautionText(one, wordsFor(words))))
    }
    look()
    element.addEventListener('change', look)
    return () => element.removeEventListener('change', look)
  }, [ref, schema, words, form.state.attempt])
  return <CautionList title="Worth a second look" sentences={sentences} />
}
