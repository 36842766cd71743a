/** The amplifier from above as it stands now: the newest readings in their sockets. */
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { ampName } from '@/lib/domain/amp/amp'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { LatestBench } from './latest-bench'

export function JobChassis({ bench, shop, jobNumber }: { bench: LatestBench; shop: Shop; jobNumber: string }) {
  const { sheet, set, result } = bench
  const words = wordsFor(shop.words)
  const read = set
    ? `${set.phase === 'before' ? 'before' : 'after'} the work, ${formatInstant(set.takenAt, shop.timeZone, words.locale)}`
    : 'no readings yet'
  return (
    <ChassisDrawing
      title={ampName(sheet.amp)}
      titleLines={[`job ${jobNumber}, ${read}`]}
      sockets={socketViews(sheet, result, () => `/jobs/${jobNumber}/bench`)}
      words={chassisWords(words)}
    />
  )
}
