/** `calc predict`: idle of a proposed tube before it is fitted, with an honest band. */
import { calculator } from '@/lib/calc/calculator'
import { predictAtVoltages } from './predict-at-voltages'
import { predictInCircuit } from './predict-in-circuit'
import { predictExample, predictInput } from './predict-input'

export const predict = calculator({
  title: 'Predicted idle of a proposed tube, at known voltages or in a whole output stage',
  input: predictInput,
  example: predictExample,
  calculate: (given) => (given.given === 'voltages' ? predictAtVoltages(given) : predictInCircuit(given)),
})
