/**
 * Power at which an output group clips into its load (checks/load-line.ts): the weaker of
 * the two sides, since it clips first. Screens on a tap or on the plates swing with the
 * plate, which the estimate does not follow.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { type ClippingEstimate, clippingEstimate } from '@/lib/domain/circuit/checks/load-line'
import { ohms } from '@/lib/domain/units'
import { cannotSay, type SideCheck } from './side-check'
import type { SideGiven } from './side-given'

function estimates(circuit: AmpCircuit, load: number): ClippingEstimate[] {
  const { stage, solution, service } = circuit
  const single = service === 'single-ended-class-a'
  return stage.tubes.flatMap((one, i) => {
    const idle = solution.tubes[i]
    if (!idle || idle.plateToCathode <= 0) return []
    const tubesPerSide = stage.tubes.filter(({ side }) => side === one.side).length
    return [
      clippingEstimate({
        tube: one.tube,
        tubesPerSide,
        plate: idle.plateToCathode,
        screen: idle.screenToCathode,
        plateCurrent: idle.plateCurrent,
        load: ohms(load),
        arrangement: single ? 'single-ended' : 'push-pull',
      }),
    ]
  })
}

function checkOf(circuit: AmpCircuit, load: number | null): SideCheck {
  const { stage, sockets } = circuit
  const head = { name: 'clipping-power', part: sockets.map(({ position }) => position).join(', ') } as const
  if (load === null || load <= 0) return cannotSay(head, 'plate load')
  const pentodes = stage.tubes.some(({ tube }) => tube.kind === 'pentode')
  const moving = stage.screenFeed.kind === 'primary-tap' || stage.screenFeed.kind === 'triode-strapped'
  if (pentodes && moving) {
    return { ...head, value: null, limit: null, verdict: 'cannot-say', why: { code: 'screens-move' } }
  }
  const [weakest] = estimates(circuit, load).sort((a, b) => a.power - b.power)
  if (!weakest) return cannotSay(head, 'idle readings')
  return {
    ...head,
    value: { amount: weakest.power, unit: 'W' },
    limit: null,
    verdict: 'ok',
    why: { code: 'clips', where: weakest.clips, loadOhms: load, tubes: stage.tubes.length },
  }
}

export function loadChecks({ sheet, circuits }: SideGiven): SideCheck[] {
  if (circuits.length === 0) return [cannotSay({ name: 'clipping-power', part: '' }, 'idle readings')]
  return circuits.map((one) => checkOf(one, sheet.amp.plateLoadOhms))
}
