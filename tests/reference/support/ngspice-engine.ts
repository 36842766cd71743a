/** ngspice as WebAssembly inside this process. One engine for a whole file: it takes about a second to start. */
import { Simulation } from 'eecircuit-engine'

export type OperatingVectors = ReadonlyMap<string, number>

export type NgspiceEngine = { readonly operatingPoint: (netlist: string) => Promise<OperatingVectors> }

export async function startNgspice(): Promise<NgspiceEngine> {
  const simulation = new Simulation()
  await simulation.start()
  return {
    operatingPoint: async (netlist) => {
      const result = await quietly(() => {
        simulation.setNetList(netlist)
        return simulation.runSim()
      })
      if (result.dataType !== 'real' || result.numPoints !== 1) {
        throw new Error(`ngspice gave ${result.numPoints} points: ${simulation.getError().join(' ')}`)
      }
      return new Map(result.data.map(({ name, values }) => [name, values[0] as number]))
    },
  }
}

/** ngspice tells on the error stream how it steps its way to a solution: no news, and never an error of ours. */
async function quietly<T>(work: () => Promise<T>): Promise<T> {
  const { error, warn } = console
  console.error = () => {}
  console.warn = () => {}
  try {
    return await work()
  } finally {
    console.error = error
    console.warn = warn
  }
}
