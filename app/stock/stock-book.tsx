/** Head of a page of the stock that is kept by count: where one is, how to look something up, how to write a new one down. */
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import type { Actor } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { type StockSection, StockSections } from './stock-sections'

type Props = {
  readonly shop: Shop
  readonly actor: Actor
  readonly section: StockSection
  readonly title: string
  /** Of the button to `section/new`. */
  readonly newText: string
  readonly search: string
  readonly searchLabel: string
  readonly children: React.ReactNode
}

export function StockBook({ shop, actor, section, title, newText, search, searchLabel, children }: Props) {
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section={section} />
      <div className="page-head">
        <h1>{title}</h1>
        <Link className="button" href={`${section}/new`}>
          {newText}
        </Link>
      </div>
      <SearchBar action={section} value={search} label={searchLabel} />
      {children}
    </Shell>
  )
}

export const noneText = (search: string): string => `None${search ? ` for “${search}”` : ' written down yet'}.`
