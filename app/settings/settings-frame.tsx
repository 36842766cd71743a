/** Head of every settings page: what can be set, and who may. */
import { SectionTabs } from '@/app/_components/section-tabs'
import { Shell } from '@/app/_components/shell/shell'
import { type Actor, dutyNeeds } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'

const SECTIONS = [
  ['/settings', 'Shop'],
  ['/settings/people', 'People'],
  ['/settings/instruments', 'Instruments'],
  ['/settings/operations', 'Operations'],
  ['/settings/makers', 'Makers'],
  ['/settings/labels', 'Labels'],
  ['/settings/mail', 'Mail'],
  ['/settings/pass-phrase', 'Your pass phrase'],
] as const

export type Section = (typeof SECTIONS)[number][0]

type Props = {
  readonly actor: Actor
  readonly shop: Shop
  readonly section: Section
  readonly children: React.ReactNode
}

export function SettingsFrame({ actor, shop, section, children }: Props) {
  return (
    <Shell actor={actor} shop={shop}>
      <SectionTabs<Section> label="Settings" tabs={SECTIONS} open={section} />
      {children}
    </Shell>
  )
}

export const KeeperOnly = () => <p className="form-message">{dutyNeeds('keep-shop')} Here they can be read.</p>
