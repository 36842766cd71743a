/** What the figures of a data sheet are called, and the unit each stands in. */
import { capital, type Words } from '../words'
import type { LimitKey, RowKey } from './handbook-type'

export type FigureName = { readonly label: string; readonly unit: string }

type Written = readonly [label: string, unit: string]
/** "%plate" is the plate or the anode, as the shop says. */
const LIMITS: Readonly<Record<Exclude<LimitKey, `sourceOhmsPerPlateAt${string}`>, Written>> = {
  plateVolts: ['%Plate voltage', 'V'],
  plateVoltsCold: ['%Plate voltage, cut off', 'V'],
  screenVolts: ['Screen voltage', 'V'],
  screenVoltsCold: ['Screen voltage, cut off', 'V'],
  plateScreenJoinedVolts: ['%Plate and screen joined', 'V'],
  triodeConnectedVolts: ['Triode-connected voltage', 'V'],
  triodeOrUltralinearVolts: ['Triode-connected or ultralinear voltage', 'V'],
  plateWatts: ['%Plate dissipation', 'W'],
  bothUnitsPlateWatts: ['%Plate dissipation, both units', 'W'],
  screenWatts: ['Screen dissipation', 'W'],
  plateAndScreenWatts: ['%Plate and screen dissipation', 'W'],
  triodeConnectedWatts: ['Dissipation, triode-connected', 'W'],
  cathodeMilliamps: ['Cathode current', 'mA'],
  plateMilliampsGridSupplied: ['%Plate current, grid-supplied bias', 'mA'],
  plateMilliampsCathodeBias: ['%Plate current, cathode bias', 'mA'],
  heaterCathodeVolts: ['Heater to cathode', 'V'],
  gridLeakMegohms: ['Grid leak', 'MΩ'],
  gridLeakGridSuppliedMegohms: ['Grid leak, grid-supplied bias', 'MΩ'],
  gridLeakCathodeBiasMegohms: ['Grid leak, cathode bias', 'MΩ'],
  warmUpSeconds: ['Heater warm-up', 's'],
  bulbCelsius: ['Bulb temperature', '°C'],
  peakInverseVolts: ['Peak inverse voltage', 'V'],
  peakPlateMilliamps: ['Peak %plate current', 'mA'],
  transientPlateAmps: ['Transient peak %plate current', 'A'],
  outputMilliamps: ['Direct output current', 'mA'],
  capacitorInputRmsVolts: ['Supply per %plate into a capacitor, RMS', 'V'],
  chokeInputRmsVolts: ['Supply per %plate into a choke, RMS', 'V'],
  transformerRmsVolts: ['Transformer per %plate, RMS', 'V'],
  reservoirMicrofarads: ['Reservoir', 'µF'],
  sourceOhmsPerPlate: ['Source resistance per %plate, at least', 'Ω'],
}

const ROWS: Readonly<Record<RowKey, Written>> = {
  plateVolts: ['%Plate voltage', 'V'],
  screenVolts: ['Screen voltage', 'V'],
  suppressorVolts: ['Suppressor voltage', 'V'],
  gridVolts: ['Grid voltage', 'V'],
  supplyVolts: ['Supply voltage', 'V'],
  screenSupplyVolts: ['Screen supply voltage', 'V'],
  plateMilliamps: ['%Plate current', 'mA'],
  plateMilliampsFullSignal: ['%Plate current, full signal', 'mA'],
  screenMilliamps: ['Screen current', 'mA'],
  screenMilliampsFullSignal: ['Screen current, full signal', 'mA'],
  gmMilliampsPerVolt: ['Transconductance', 'mA/V'],
  plateResistanceKilohms: ['%Plate resistance', 'kΩ'],
  mu: ['Amplification factor', ''],
  screenGridMu: ['Amplification factor, grid to screen', ''],
  cathodeOhms: ['Cathode resistor', 'Ω'],
  commonCathodeOhms: ['Common cathode resistor', 'Ω'],
  commonScreenOhms: ['Common screen resistor', 'Ω'],
  loadKilohms: ['Load', 'kΩ'],
  plateToPlateKilohms: ['Load, %plate to %plate', 'kΩ'],
  plateLoadKilohms: ['%Plate load', 'kΩ'],
  voltageGain: ['Voltage gain', ''],
  distortionPercent: ['Distortion', '%'],
  outputWatts: ['Output', 'W'],
  dropVolts: ['Drop', 'V'],
  dropMilliampsPerPlate: ['Current per %plate', 'mA'],
}

const named = ([label, unit]: Written, { plate }: Pick<Words, 'plate'>): FigureName => ({
  label: label.replace(/%Plate/g, capital(plate)).replace(/%plate/g, plate),
  unit,
})

export function limitName(key: LimitKey, words: Pick<Words, 'plate'>): FigureName {
  const at = /^sourceOhmsPerPlateAt(\d+)Volts$/.exec(key)?.[1]
  if (at === undefined) return named(LIMITS[key as keyof typeof LIMITS], words)
  return named([`Source resistance per %plate at ${at} V, at least`, 'Ω'], words)
}

export const rowName = (key: RowKey, words: Pick<Words, 'plate'>): FigureName => named(ROWS[key], words)

/** Every figure a row can have, in the order of a data sheet. */
export const ROW_KEYS = Object.keys(ROWS) as readonly RowKey[]
