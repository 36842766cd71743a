/** The amplifier from above as it stands now: the newest readings in their sockets. */
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { ampName } from '@/lib/domain/amp/amp'
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { LatestBench } from './latest-bench'

export function JobChassis({ bench, shop, jobNumber }: { bench: LatestBench; shop: Shop; jobNumber: string }) {
  const { sheet, set, standing } = bench
  const words = wordsFor(shop.words)
  const day = set && formatDay(dayInZone(set.takenAt, shop.timeZone), words.locale)
  const read = set ? `${set.phase}, ${day}` : `job ${jobNumber}`
  return (
    <ChassisDrawing
      title={ampName(sheet.amp)}
      titleLines={[read]}
      sockets={socketViews(sheet, standing, shop, () => `/jobs/${jobNumber}/bench`)}
      words={chassisWords(words)}
    />
  )
}
