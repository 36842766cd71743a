/**
 * Microphony: whether a tube rings when it is tapped while it works. A fact of its own beside
 * noise (hum, hiss), as a tube may be quiet and ring, and the other way round.
 *
 * Written in one's own words; a text that begins with a word of the scale counts as that.
 * A tube that rings strongly is kept out of first stages and phase inverters, where all that
 * follows amplifies it (common practice, no source).
 */
export const MICROPHONY_SCALE = ['none', 'slight', 'strong'] as const

export type MicrophonyGrade = (typeof MICROPHONY_SCALE)[number]

/** null: not looked for, or in words that are not of the scale. */
export function microphonyGrade(text: string | null): MicrophonyGrade | null {
  const [first = ''] = (text ?? '')
    .trim()
    .toLowerCase()
    .split(/[^a-z]+/)
  return MICROPHONY_SCALE.find((grade) => grade === first) ?? null
}

type Heard = { readonly noise: string; readonly microphony: string | null }

/** Empty: nothing was noted. Where microphony was not asked for by itself, it may be told of here. */
export const noiseText = ({ noise, microphony }: Heard): string =>
  noise !== '' && microphony === null ? `${noise} (may include microphony)` : noise

/** With their names; empty: nothing was noted. */
export const heardTexts = (heard: Heard): string[] => [
  ...(heard.noise ? [`Noise: ${noiseText(heard)}`] : []),
  ...(heard.microphony ? [`Microphony: ${heard.microphony}`] : []),
]
