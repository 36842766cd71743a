import * as z from 'zod/mini'
import { after, optionalChoice } from '@/app/_components/form/fields'
import { furtherFields } from '../further-schema'
import { SHORTS, testFields } from '../test-schema'
import { detailFields, type StockKit } from '../tube-schema'

/** Somebody who does no bench work is shown no test, so its choice may be missing. */
export const newTubeSchema = (kit: StockKit) =>
  z.object({
    ...detailFields(kit),
    ...furtherFields(),
    ...testFields(kit.words),
    shorts: after(optionalChoice('Shorts', SHORTS), (shorts) => shorts || 'none'),
  })
