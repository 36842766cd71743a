/** Why a stage has no operating point, with the key of the input to look at. */

import type { InputFault } from '@/lib/calc/input/input-fault'
import { figure } from '@/lib/calc/output/figure'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { InCircuit } from './predict-input'

function placeOfSocket({ sockets }: InCircuit, socket: string, part?: string): string {
  const index = sockets.findIndex((one) => one.socket === socket)
  if (part === undefined) return `sockets[${index}]`
  return `sockets[${index}].${sockets[index]?.gridSupply === part ? 'gridSupply' : 'biasResistor'}`
}

function lastPlaceOf({ sockets, gridSupplies, biasResistors }: InCircuit, part: string): string {
  const last = (list: readonly string[]): number => list.lastIndexOf(part)
  const twice = (list: readonly string[]): boolean => list.indexOf(part) !== last(list)
  const supplies = gridSupplies.map(({ id }) => id)
  const resistors = biasResistors.map(({ id }) => id)
  if (twice(supplies)) return `gridSupplies[${last(supplies)}].id`
  if (twice(resistors)) return `biasResistors[${last(resistors)}].id`
  return `sockets[${last(sockets.map(({ socket }) => socket))}].socket`
}

type Said = { readonly path: string; readonly sentence: string }

function said(fault: SolveFault, given: InCircuit): Said {
  switch (fault.code) {
    case 'tube-count':
      return { path: 'sockets', sentence: `sockets has ${fault.count}; it must have 1 to ${fault.most}.` }
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
      return { path, sentence: `${path} is ${JSON.stringify(fault.part)}; it must be an id of ${where}.` }
    }
    case 'name-used-twice': {
      const path = lastPlaceOf(given, fault.part)
      return { path, sentence: `${path} is ${JSON.stringify(fault.part)}, which is used before; give each its own.` }
    }
    case 'unknown-socket':
      return { path: 'sockets', sentence: `${JSON.stringify(fault.socket)} is no socket of the input.` }
    case 'supply-collapsed': {
      const path = fault.node === 'reservoir' ? 'supply.drawnMilliamps' : 'screenFeed.drawnMilliamps'
      return {
        path,
        sentence: `${path} is more than the supply gives: without any tube the ${fault.node} would stand at ${figure(fault.volts)} V, and it must be above 0 V.`,
      }
    }
    case 'did-not-converge':
      return {
        path: '',
        sentence: `No operating point was found in ${fault.iterations} steps. Check the values of the circuit.`,
      }
  }
}

export const solveFault = (fault: SolveFault, given: InCircuit): InputFault => ({
  code: fault.code,
  ...said(fault, given),
})
