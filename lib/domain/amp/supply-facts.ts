/**
 * What is known of the supplies behind the output tubes of one amplifier, as measured,
 * else as marked. Null is "not known" everywhere and never zero; what the readings do not
 * fix either is then assumed, and said to be.
 */
export const SCREEN_FEEDS = ['own-supply', 'ultralinear-tap', 'triode-strapped'] as const
/** Own supply: a node of the supply. Ultralinear: a tap of each half primary. Triode-strapped: to the plate. */
export type ScreenFeedKind = (typeof SCREEN_FEEDS)[number]

/** A rectifier written so: silicon. */
export const SOLID_STATE = ''

export type SupplyFacts = {
  /** DC at the reservoir with no tube drawing, at the amplifier's marked mains voltage. */
  readonly openSupplyVolts: number | null
  /** What the supply sags by with load, apart from a rectifier tube: windings, choke, seen at the reservoir. */
  readonly sourceOhms: number | null
  /** Designation, "5U4G"; '' is solid state. */
  readonly rectifierType: string | null
  readonly reservoirMicrofarads: number | null
  readonly screenFeed: ScreenFeedKind | null
  /** Turns between supply and tap, in per cent of the half primary: 0 to 100. */
  readonly ultralinearTapPercent: number | null
  /** Between reservoir and screen node; 0 where they are one node. */
  readonly screenDropperOhms: number | null
  /** At the supply end of the grid leak, as the adjustment stands: negative. */
  readonly gridSupplyVolts: number | null
  /** Coldest the adjustment reaches: the most negative. */
  readonly gridColdestVolts: number | null
  /** Hottest the adjustment reaches: the least negative. */
  readonly gridHottestVolts: number | null
  /** Of each output tube, to its grid supply or to chassis. */
  readonly gridLeakOhms: number | null
  /** Of the winding that feeds the output tubes, RMS as marked. */
  readonly heaterWindingVolts: number | null
  readonly heaterWindingAmps: number | null
  /** Across the reservoir when it is to be emptied: the bleeder, or the tool's. */
  readonly dischargeOhms: number | null
}

export const NO_SUPPLY_FACTS: SupplyFacts = {
  openSupplyVolts: null,
  sourceOhms: null,
  rectifierType: null,
  reservoirMicrofarads: null,
  screenFeed: null,
  ultralinearTapPercent: null,
  screenDropperOhms: null,
  gridSupplyVolts: null,
  gridColdestVolts: null,
  gridHottestVolts: null,
  gridLeakOhms: null,
  heaterWindingVolts: null,
  heaterWindingAmps: null,
  dischargeOhms: null,
}
