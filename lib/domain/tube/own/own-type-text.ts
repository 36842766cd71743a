/** Sentences about a type the shop writes down. */
import type { IndividualFault } from '../../model/individual-tube'
import type { OwnTypeCaution, OwnTypeFault } from './own-type-faults'

const point = (row: number): string => `Operating point ${row + 1}`
const watts = (value: number): string => `${value.toFixed(1)} W`

export function ownTypeFaultText(fault: OwnTypeFault): string {
  switch (fault.code) {
    case 'number-taken':
      return `${fault.number} is ${fault.by === fault.number ? 'known already' : `known already as a number of ${fault.by}`}. Give the designation that is printed on this very type.`
    case 'number-twice':
      return `Other numbers: ${fault.number} is given twice.`
    case 'no-such-pin':
      return `Pins: there is no pin ${fault.pin}; this base has ${fault.most}.`
    case 'screen-volts-missing':
      return `${point(fault.row)}: screen volts are missing, and this class has a screen.`
    case 'drop-missing':
      return 'Drop: a rectifier needs its drop at one current, per plate. Without it nothing can be computed.'
    case 'curves-do-not-fit':
      return `Curves: ${misfit(fault.cause, fault.like)}`
  }
}

function misfit(cause: 'no-curves' | IndividualFault, like: string): string {
  switch (cause) {
    case 'no-curves':
      return `${like} has no curves here. Choose another type, or none.`
    case 'test-point-cut-off':
      return `${like} carries next to no current at an operating point given. Choose a type more like it, or check the grid volts.`
    case 'unlike-the-type':
      return `the operating points differ from ${like} by more than a factor of four. Choose a type more like it, or check the figures.`
    case 'readings-not-distinct':
    case 'no-record':
    case 'reading-not-positive':
      return `the curves of ${like} cannot be moved to these operating points. Check the currents, or leave out what is doubtful.`
  }
}

export function ownTypeCautionText(caution: OwnTypeCaution): string {
  switch (caution.code) {
    case 'mu-not-gm-rp':
      return `${point(caution.row)}: transconductance times plate resistance is ${caution.product.toFixed(1)}, but the amplification factor given is ${caution.mu}. One of the three is doubtful.`
    case 'row-over-rating':
      return `${point(caution.row)} dissipates ${watts(caution.watts)} at the plate, above the rating of ${watts(caution.rating)} given.`
    case 'screen-row-over-rating':
      return `${point(caution.row)} dissipates ${watts(caution.watts)} at the screen, above the rating of ${watts(caution.rating)} given.`
    case 'no-plate-rating':
      return 'No plate dissipation is given: the bench can compute watts, but no per cent of rating.'
  }
}
