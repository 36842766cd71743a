/** What a healthy amplifier of each model shows at the sign-off. */
import type { ModelKey } from '@/seed/amps/models'
import type { SafetyFigures } from './safety'

type Figures = Omit<SafetyFigures, 'soakReading' | 'heard'>

const SINE = 'sine at 1 kHz'

export const USUAL_FIGURES: Readonly<Record<ModelKey, Figures>> = {
  pipit5: {
    bondOhms: 0.08,
    insulationMegohms: 210,
    leakageMilliamps: 0.31,
    powerWatts: 4.4,
    load: `4 Ω, 5 min, ${SINE}`,
    soakMinutes: 60,
  },
  tansy18: {
    bondOhms: 0.07,
    insulationMegohms: 260,
    leakageMilliamps: 0.38,
    powerWatts: 16.5,
    load: `8 Ω, 10 min, ${SINE}`,
    soakMinutes: 75,
  },
  foreman40: {
    bondOhms: 0.09,
    insulationMegohms: 145,
    leakageMilliamps: 0.52,
    powerWatts: 39,
    load: `4 Ω, 10 min, ${SINE}`,
    soakMinutes: 90,
  },
  millstone100: {
    bondOhms: 0.06,
    insulationMegohms: 180,
    leakageMilliamps: 0.64,
    powerWatts: 96,
    load: `16 Ω, 10 min, ${SINE}`,
    soakMinutes: 90,
  },
  type240: {
    bondOhms: 0.05,
    insulationMegohms: 320,
    leakageMilliamps: 0.44,
    powerWatts: 54,
    load: `8 Ω each channel, both driven, 10 min, ${SINE}`,
    soakMinutes: 120,
  },
  drover15: {
    bondOhms: 0.11,
    insulationMegohms: 120,
    leakageMilliamps: 0.47,
    powerWatts: 13.5,
    load: `8 Ω, 10 min, ${SINE}`,
    soakMinutes: 60,
  },
}
