/** Sentences about a type the shop writes down. */
import type { Words } from '../../words'
import type { OwnTypeCaution } from './own-type-cautions'
import type { CurvesMisfit, OwnTypeFault } from './own-type-faults'

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
    case 'row-twice':
      return `${point(fault.row)} stands at the same voltages as point ${fault.first + 1}. Keep one of them.`
    case 'row-on-rectifier':
      return `${point(fault.row)}: a rectifier has none. Take the row out and give its drop at one current.`
    case 'drop-missing':
      return 'Drop: a rectifier needs its drop at one current, per plate. Without it nothing can be computed.'
    case 'drop-on-amplifying-tube':
      return 'Drop: only a rectifier has one. Empty both boxes, or choose the class rectifier.'
    case 'curves-on-rectifier':
      return 'Curves: a rectifier takes none of another type; its own drop gives them. Choose none.'
    case 'curves-do-not-fit':
      return `Curves: ${misfit(fault.cause, fault.like)}`
  }
}

function misfit(cause: CurvesMisfit, like: string): string {
  switch (cause) {
    case 'no-curves':
      return `${like} has no curves here. Choose another type, or none.`
    case 'other-kind':
      return `${like} is of another kind: one of the two has a screen grid and the other has none. Choose a type of the same kind, or none.`
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

export function ownTypeCautionText(caution: OwnTypeCaution, { plate }: Pick<Words, 'plate'>): string {
  switch (caution.code) {
    case 'mu-not-gm-rp':
      return `${point(caution.row)}: transconductance times ${plate} resistance is ${caution.product.toFixed(1)}, but the amplification factor given is ${caution.mu}. One of the three is doubtful.`
    case 'row-over-rating':
      return `${point(caution.row)} dissipates ${watts(caution.watts)} at the ${plate}, above the rating of ${watts(caution.rating)} given.`
    case 'screen-row-over-rating':
      return `${point(caution.row)} dissipates ${watts(caution.watts)} at the screen, above the rating of ${watts(caution.rating)} given.`
    case 'heater-watts-unusual':
      return `The heater would take ${caution.watts.toFixed(caution.watts < 1 ? 3 : 1)} W; heaters of receiving types take 1 to 16 W. Check volts and amps: 450 mA is 0.45 A.`
    case 'no-plate-rating':
      return `No ${plate} dissipation is given: the bench can compute watts, but no per cent of rating.`
    case 'no-screen-rating':
      return 'No screen dissipation is given: a screen that runs too hot will not be noticed.'
    case 'no-pins':
      return 'No pins are given: nothing can be said of which sockets fit, and no pin is named at the bench.'
  }
}
