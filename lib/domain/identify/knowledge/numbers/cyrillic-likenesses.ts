/**
 * Cyrillic numbers that the handbook does not list as another number of one of its types, and what they are near.
 * All from memory, so none is taken for the type: its sheet decides. Those it does list (6П6С, 6Н8С, 6П14П, 6Ж32П) are
 * versions as any other.
 */
import type { KnowledgeSourceKey } from '../../knowledge-source'

export type CyrillicLikeness = {
  /** Without letters for the quality. */
  readonly number: string
  /** What it is near, and what is not the same. */
  readonly sentence: string
  readonly source: KnowledgeSourceKey
}

const near = (number: string, types: string, but = 'ratings and bulb of its own'): CyrillicLikeness => ({
  number,
  sentence: `near the ${types}, with ${but}. Not taken for it; its own sheet decides.`,
  source: 'memory',
})

export const CYRILLIC_LIKENESSES: readonly CyrillicLikeness[] = [
  near('6П3С', '6L6G', 'lower ratings than the 6L6GC'),
  near('6П1П', '6AQ5', 'a noval base and so other pins'),
  near('6П7С', '6BG6G', 'a top cap'),
  near('6П15П', 'EL83', 'pins that are not those of the EL84'),
  near('6П27С', 'EL34'),
  near('6Н1П', '6DJ8', 'a heater of twice the current and another curve'),
  near('6Н2П', 'ECC83 in gain', 'a heater of 6.3 V between pins 4 and 5 and a shield on pin 9, so other wiring'),
  near('6Н9С', '6SL7GT'),
  near('6Н13С', '6AS7G'),
  near('6Н5С', '6AS7G'),
  near('6Н23П', '6DJ8 (ECC88)'),
  near('6С4С', '2A3', 'a heater of 6.3 V and an octal base: the 6B4G'),
  near('2С4С', '2A3'),
  near('5Ц3С', '5U4G'),
]
