/** Every side check of an amplifier in one list, in the order of the bench: what can burn first, estimates last. */
import { couplingChecks, gridLeakChecks } from './grid-checks'
import { heaterChecks } from './heater-checks'
import { loadChecks } from './load-checks'
import { dischargeChecks, rippleChecks } from './reservoir-checks'
import { screenChecks } from './screen-checks'
import type { SideCheck } from './side-check'
import type { SideGiven } from './side-given'

export const sideChecks = (given: SideGiven): readonly SideCheck[] => [
  ...screenChecks(given),
  ...couplingChecks(given),
  ...gridLeakChecks(given),
  ...heaterChecks(given),
  ...dischargeChecks(given),
  ...rippleChecks(given),
  ...loadChecks(given),
]
