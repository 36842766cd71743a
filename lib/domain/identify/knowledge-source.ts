/**
 * Where each piece of the identification knowledge comes from, spelled out once.
 *
 * "published" was read in the scheme or page named; "common-practice" is known in the trade and
 * has no single source; "from-memory" was recalled and not looked up.
 */
export type KnowledgeBasis = 'published' | 'common-practice' | 'from-memory' | 'handbook' | 'shop-entry'

export type KnowledgeSource = { readonly basis: KnowledgeBasis; readonly text: string }

const published = (text: string): KnowledgeSource => ({ basis: 'published', text })

export const KNOWLEDGE_SOURCES = {
  retma: published('the RETMA type designation scheme, as copied by an encyclopaedia'),
  radiotron: published('the Radiotron Designer’s Handbook, 4th edition, on US type numbers'),
  'us-industrial': published('a collectors’ page on US industrial tube numbers'),
  european: published('the European type letters (later Pro-Electron), as printed in a valve data book'),
  'special-european': published('an encyclopaedia article on the European type letters'),
  british: published('a collectors’ society page on British service and makers’ valve numbers'),
  'source-code': published('a collector’s page on EIA source and date codes'),
  'etched-code': published('several collectors’ pages on European etched factory codes, which agree'),
  'etched-type': published('collectors’ pages that list etched type codes'),
  'etched-change': published('one collector’s page on European date codes; its years are approximate'),
  'getter-page': published('a builders’ forum page on getters'),
  'getter-1950': published('“Electronics”, October 1950, as quoted on a dealer’s page'),
  'collar-page': published('a collector’s data page on the EL34'),
  'type-history': published('collectors’ and encyclopaedia pages on the type; they differ by a year or so'),
  handbook: { basis: 'handbook', text: 'the handbook here: base, pins and class of the type' },
  practice: { basis: 'common-practice', text: 'common practice, no source' },
  memory: { basis: 'from-memory', text: 'from memory, not looked up' },
  shop: { basis: 'shop-entry', text: 'the shop’s own entry' },
} as const satisfies Readonly<Record<string, KnowledgeSource>>

export type KnowledgeSourceKey = keyof typeof KNOWLEDGE_SOURCES

export const knowledgeSource = (key: KnowledgeSourceKey): KnowledgeSource => KNOWLEDGE_SOURCES[key]
