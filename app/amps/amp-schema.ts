import * as z from 'zod/mini'
import { choice, measure, requiredMeasure, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { type Amp, type AmpDetails, OUTPUT_CLASSES, PROTECTION_CLASSES } from '@/lib/domain/amp/amp'

export const ampFields = {
  make: text({ label: 'Make', required: true, max: 80 }),
  model: text({ label: 'Model', required: true, max: 80 }),
  serial: text({ label: 'Serial', max: 60 }),
  mainsVolts: requiredMeasure({ label: 'Mains voltage', unit: 'V', min: 90, max: 260 }),
  protectionClass: choice('Protection class', PROTECTION_CLASSES),
  fuse: text({ label: 'Fuse as marked', max: 60 }),
  outputClass: choice('Output stage', OUTPUT_CLASSES),
  plateLoadOhms: measure({ label: 'Load at the output transformer', unit: 'Ω', min: 100, max: 50_000 }),
  note: text({ label: 'Note', max: 1000 }),
}

export const ampSchema = z.object({
  id: text({ label: 'Amplifier' }),
  customerId: text({ label: 'Owner' }),
  version: version(),
  ...ampFields,
})

const ampText = ({ mainsVolts, plateLoadOhms, ...texts }: AmpDetails) => ({
  make: texts.make,
  model: texts.model,
  serial: texts.serial,
  mainsVolts: String(mainsVolts),
  protectionClass: texts.protectionClass,
  fuse: texts.fuse,
  outputClass: texts.outputClass,
  plateLoadOhms: plateLoadOhms === null ? '' : String(plateLoadOhms),
  note: texts.note,
})

export const ampValues = (amp: Amp): FormValues =>
  sheetValues({ id: amp.id, customerId: amp.customerId, version: String(amp.version), ...ampText(amp) })

/** A new amplifier most often runs on the shop's own mains. */
export const newAmpValues = (customerId: string, mainsVolts: number): FormValues => ({
  id: '',
  customerId,
  version: '0',
  ...ampText({
    make: '',
    model: '',
    serial: '',
    mainsVolts,
    protectionClass: 'unknown',
    fuse: '',
    outputClass: 'push-pull',
    plateLoadOhms: null,
    note: '',
  }),
})
