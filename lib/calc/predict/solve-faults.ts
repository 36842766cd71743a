/** Why a stage has no operating point, with the key of the input to look at. */

import type { InputFault } from '@/lib/calc/input/input-fault'
import { figure } from '@/lib/calc/output/figure'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { StageInput } from './predict-input'

function placeOfSocket({ sockets }: StageInput, socket: string, part?: string): string {
  const index = sockets.findIndex((one) => one.socket === socket)
  if (part === undefined) return `sockets[${index}]`
  return `sockets[${index}].${sockets[index]?.gridSupply === part ? 'gridSupply' : 'biasResistor'}`
}

function lastPlaceOf({ sockets, gridSupplies, biasResistors }: StageInput, part: string): string {
  const last = (list: readonly string[]): number => list.lastIndexOf(part)
  const twice = (list: readonly string[]): boolean => list.indexOf(part) !== last(list)
  const supplies = gridSupplies.map(({ id }) => id)
  const resistors = biasResistors.map(({ id }) => id)
  if (twice(supplies)) return `gridSupplies[${last(supplies)}].id`
  if (twice(resistors)) return `biasResistors[${last(resistors)}].id`
  return `sockets[${last(sockets.map(({ socket }) => socket))}].socket`
}

type Said = { readonly path: string; readonly sentence: string }

/** The sentence after its path; a path of its own begins it. */
const at = (path: string, rest: string): Said => ({ path, sentence: `${path} ${rest}` })

function said(fault: SolveFault, given: StageInput, within: string): Said {
  switch (fault.code) {
    case 'tube-count':
      return at(`${within}sockets`, `has ${fault.count}; it must have 1 to ${fault.most}.`)
    case 'value-out-of-range': {
      const { part, quantity, value, unit, lowest, highest } = fault
      return {
        path: '',
        sentence: `${part}: ${quantity} is ${figure(value)} ${unit}; it must be from ${lowest} to ${highest}.`,
      }
    }
    case 'unknown-part': {
      const path = placeOfSocket(given, fault.socket, fault.part)
      const where = path.endsWith('gridSupply') ? 'gridSupplies' : 'biasResistors'
      return at(within + path, `is ${JSON.stringify(fault.part)}; it must be an id of ${within}${where}.`)
    }
    case 'name-used-twice': {
      const path = lastPlaceOf(given, fault.part)
      return at(within + path, `is ${JSON.stringify(fault.part)}, which is used before; give each its own.`)
    }
    case 'unknown-socket':
      return { path: `${within}sockets`, sentence: `${JSON.stringify(fault.socket)} is no socket of the input.` }
    case 'supply-collapsed': {
      const path = fault.node === 'reservoir' ? 'supply.drawnMilliamps' : 'screenFeed.drawnMilliamps'
      const stands = `without any tube the ${fault.node} would stand at ${figure(fault.volts)} V`
      return at(within + path, `is more than the supply gives: ${stands}, and it must be above 0 V.`)
    }
    case 'did-not-converge':
      return {
        path: '',
        sentence: `No operating point was found in ${fault.iterations} steps. Check the values of the circuit.`,
      }
  }
}

/** `within`: the path of the stage in the input, with a point behind it. */
export const solveFault = (fault: SolveFault, given: StageInput, within = ''): InputFault => ({
  code: fault.code,
  ...said(fault, given, within),
})
