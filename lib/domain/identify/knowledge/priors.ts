/**
 * Before anything is looked at. Every type is as likely as any other: what a shop has in its drawers
 * is not known here. Within a type a version under its usual number counts three times a special-quality
 * issue or another number; services as given. All of it is common practice, no source.
 */
import type { Service, Version } from '../version'

/** That the bottle is none of those known here. */
export const PRIOR_UNKNOWN = 0.05

export const STANDING_WEIGHT: Readonly<Record<Version['standing'], number>> = {
  designation: 1,
  'other-number': 1 / 3,
  'special-quality': 1 / 3,
}

export const SERVICE_WEIGHT: Readonly<Record<Service, number>> = {
  civil: 1,
  jan: 0.12,
  'common-valve': 0.1,
  'signal-corps': 0.08,
  'british-service': 0.04,
}
