/** What everyone at the bench knows and nobody may forget. */
import type { Words } from '@/lib/domain/words'

export function BenchCautions({ words }: { words: Words }) {
  return (
    <aside className="caution" aria-label="Cautions">
      <strong>This can kill.</strong>
      <ul>
        <li>
          {words.supply} stays lethal after the plug is out. Discharge, then prove it with the meter, and prove it
          again.
        </li>
        <li>
          One hand, rated probes, meter rated above the {words.supply}: the {words.plate} of a driven {words.tube} can
          swing to twice as much.
        </li>
        <li>Never run it without its correct load. Glass burns; use the fuse that is marked.</li>
        <li>Local codes and licensed practice come first.</li>
      </ul>
    </aside>
  )
}
