/** A page of settings that is a list: its heading, the way to write a new one down, who may, and the table. */
import Link from 'next/link'
import type { Actor } from '@/lib/domain/person/role'
import { mayDo } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { KeeperOnly, type Section, SettingsFrame } from './settings-frame'

type Props = {
  readonly actor: Actor
  readonly shop: Shop
  readonly section: Section
  readonly title: string
  /** Of the button to `section/new`, for whoever keeps the shop. */
  readonly newText: string
  /** Rows of headings and of the body. */
  readonly children: React.ReactNode
}

export function SettingsList({ actor, shop, section, title, newText, children }: Props) {
  const keeper = mayDo(actor, 'keep-shop')
  return (
    <SettingsFrame actor={actor} shop={shop} section={section}>
      <div className="page-head">
        <h1>{title}</h1>
        {keeper && (
          <Link className="button" href={`${section}/new`}>
            {newText}
          </Link>
        )}
      </div>
      {!keeper && <KeeperOnly />}
      <div className="panel table-scroll">
        <table>{children}</table>
      </div>
    </SettingsFrame>
  )
}
