/**
 * One tube socket on the sheet of an amplifier: what sits in it and the parts
 * around it that bench readings are computed from. Resistances as measured,
 * else as marked. Null: not known; never zero.
 */
export const SOCKET_ROLES = [
  'preamp',
  'phase-inverter',
  'driver',
  'reverb',
  'tremolo',
  'output',
  'rectifier',
  'regulator',
  'other',
] as const
export type SocketRole = (typeof SOCKET_ROLES)[number]

export const BIAS_KINDS = ['grid-supplied', 'cathode-resistor'] as const
/** Empty: not known yet, or no output socket. */
export type SocketBiasKind = (typeof BIAS_KINDS)[number] | ''

export const SIDES = ['A', 'B'] as const
/** Half of the push-pull pair; empty when single-ended, not known, or no output socket. */
export type Side = (typeof SIDES)[number] | ''

export type SocketDetails = {
  /** "V1"; unique on its sheet. */
  readonly position: string
  readonly role: SocketRole
  /** Designation as written, "6V6GT"; the handbook may not know it. */
  readonly typeFitted: string
  /** Mark of the very tube, free text: a stock mark or what its owner wrote on it. */
  readonly markFitted: string
  /** Output sockets matched together bear the same name; empty for other roles. */
  readonly matchGroup: string
  readonly biasKind: SocketBiasKind
  readonly side: Side
  readonly cathodeOhms: number | null
  /** Tubes whose cathode current flows through that resistor, this one included. */
  readonly cathodeSharedBy: number
  /** Low resistor put into this tube's own cathode lead for reading current. */
  readonly senseOhms: number | null
  readonly screenOhms: number | null
  /** DC resistance of this side's half of the output transformer primary, cold. */
  readonly halfPrimaryOhms: number | null
  /** Tubes in parallel on that half, this one included. */
  readonly halfSharedBy: number
  /** Place on the chassis seen from above, controls in front: 0 left to 100 right. Null: automatic. */
  readonly across: number | null
  /** 0 front to 100 rear. Null: automatic. */
  readonly depth: number | null
}

export type Socket = SocketDetails & {
  readonly id: string
  /** In chassis order, from 0. */
  readonly place: number
}

export const USUAL_MATCH_GROUP = 'output'

/** A socket of which only position, role and type are known. */
export const plainSocket = (position: string, role: SocketRole, typeFitted = ''): SocketDetails => ({
  position,
  role,
  typeFitted,
  markFitted: '',
  matchGroup: role === 'output' ? USUAL_MATCH_GROUP : '',
  biasKind: '',
  side: '',
  cathodeOhms: null,
  cathodeSharedBy: 1,
  senseOhms: null,
  screenOhms: null,
  halfPrimaryOhms: null,
  halfSharedBy: 1,
  across: null,
  depth: null,
})

const ROLE_WORDS: Record<SocketRole, string> = {
  preamp: 'preamp',
  'phase-inverter': 'phase inverter',
  driver: 'driver',
  reverb: 'reverb',
  tremolo: 'tremolo',
  output: 'output',
  rectifier: 'rectifier',
  regulator: 'regulator',
  other: 'other',
}

export const roleWord = (role: SocketRole): string => ROLE_WORDS[role]

/** "Fixed" is the trade's word for it; a bare "bias" would say nothing. */
export function biasKindWord(kind: SocketBiasKind): string {
  switch (kind) {
    case 'grid-supplied':
      return 'grid-supplied (“fixed”)'
    case 'cathode-resistor':
      return 'cathode resistor'
    case '':
      return ''
  }
}
