/** The calculators by name. Each is loaded when it is asked for: a start stays quick. */
import type { Calculator } from './calculator'

export const SUMMARIES = {
  tube: 'what the handbook knows of a type',
  idle: 'currents, dissipation and verdict from bench readings',
  predict: 'idle of a proposed tube before it is fitted, with its band',
  substitute: 'which types may go into a socket, with every reason',
  identify: 'what a bottle can be from what is seen of it, and what to look at next',
  choose: 'a matched set out of a stock, the ready-made choices, and why others lost',
  pair: 'a stock paired up at the least spread there is, with its proof',
  share: 'a stock shared over jobs: who gets what, how far that is proved, what to buy',
  discharge: 'how long a reservoir stays charged, and its energy',
} as const

export type CalculatorName = keyof typeof SUMMARIES

export const isCalculator = (name: string | undefined): name is CalculatorName =>
  name !== undefined && Object.hasOwn(SUMMARIES, name)

export async function loadCalculator(name: CalculatorName): Promise<Calculator> {
  switch (name) {
    case 'tube':
      return (await import('./tube/tube')).tube
    case 'idle':
      return (await import('./idle/idle')).idle
    case 'predict':
      return (await import('./predict/predict')).predict
    case 'substitute':
      return (await import('./substitute/substitute')).substitute
    case 'identify':
      return (await import('./identify/identify')).identify
    case 'choose':
      return (await import('./choose/choose')).choose
    case 'pair':
      return (await import('./pair/pair')).pair
    case 'share':
      return (await import('./share/share')).share
    case 'discharge':
      return (await import('./discharge/discharge')).discharge
  }
}
