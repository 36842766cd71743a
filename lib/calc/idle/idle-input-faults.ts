/** What the schema cannot say: sockets that contradict each other, a part that two read differently. */
import type { InputFault } from '@/lib/calc/input/input-fault'
import type { IdleInput, SocketInput } from './idle-input'
import type { Named } from './idle-readings'

type Use = { readonly path: string; readonly reading: string; readonly most: number }

/** What a part was given as: two sockets that name it read the same drop over the same ohms. */
const readingText = (given: Named, drop: string): string => `${drop} over ${given.ohms} Ω ± ${given.tolerancePercent} %`

function usesOf({ current, screenCurrent }: SocketInput, index: number): (Use & { readonly part: string })[] {
  const drop = current.method === 'cathode-bias' ? `${current.dropVolts} V` : `${current.dropMillivolts} mV`
  const most = current.method === 'cathode-sense' ? 1 : current.sharedBy
  const uses = []
  if (current.part !== undefined) {
    uses.push({ part: current.part, path: `sockets[${index}].current.part`, reading: readingText(current, drop), most })
  }
  if (screenCurrent.source === 'screen-resistor-drop' && screenCurrent.part !== undefined) {
    const reading = readingText(screenCurrent, `${screenCurrent.dropVolts} V`)
    uses.push({ part: screenCurrent.part, path: `sockets[${index}].screenCurrent.part`, reading, most: 1 })
  }
  return uses
}

function partFaults(sockets: readonly SocketInput[]): InputFault[] {
  const first = new Map<string, Use & { count: number }>()
  const faults: InputFault[] = []
  for (const { part, path, reading, most } of sockets.flatMap(usesOf)) {
    const before = first.get(part)
    if (!before) {
      first.set(part, { path, reading, most, count: 1 })
      continue
    }
    before.count += 1
    const name = JSON.stringify(part)
    if (before.reading !== reading || before.most !== most) {
      const sentence = `${path} is ${name} with ${reading}, shared by ${most}; ${before.path} gives it ${before.reading}, shared by ${before.most}. One part has one reading.`
      faults.push({ code: 'part-differs', path, sentence })
    } else if (before.count > most) {
      const sentence = `${path} is ${name}, named by ${before.count} sockets; sharedBy allows at most ${most}.`
      faults.push({ code: 'part-shared-by-more', path, sentence })
    }
  }
  return faults
}

function socketFaults(sockets: readonly SocketInput[]): InputFault[] {
  return sockets.flatMap(({ socket, current }, index) => {
    const faults: InputFault[] = []
    const path = `sockets[${index}]`
    if (sockets.findIndex((one) => one.socket === socket) < index) {
      const sentence = `${path}.socket is ${JSON.stringify(socket)}, which an earlier socket has; give each its own.`
      faults.push({ code: 'socket-twice', path: `${path}.socket`, sentence })
    }
    if (current.method !== 'cathode-sense' && current.sharedBy > 1 && current.part === undefined) {
      const sentence = `${path}.current.part is missing; with sharedBy ${current.sharedBy} it must name the part, so that its error counts once.`
      faults.push({ code: 'part-not-named', path: `${path}.current.part`, sentence })
    }
    return faults
  })
}

export function idleInputFaults({ sockets, windowPercent }: IdleInput): InputFault[] {
  const faults = [...socketFaults(sockets), ...partFaults(sockets)]
  if (!windowPercent || windowPercent.low <= windowPercent.high) return faults
  const { low, high } = windowPercent
  const sentence = `windowPercent.low is ${low}; it must be at most windowPercent.high, ${high}.`
  return [...faults, { code: 'window-upside-down', path: 'windowPercent.low', sentence }]
}
