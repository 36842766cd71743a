/**
 * Rows that other printed rows of the same type contradict. They are shown in the report,
 * neither fitted nor counted against a goal. Each reason uses printed figures only, no model.
 */
export const DOUBTFUL: ReadonlyMap<string, string> = new Map([
  [
    '6L6 triode-connected A1',
    '65 mA of plate and screen are printed at 250/250 V and -16 V with a gm of 5.96 mA/V for both together; ' +
      'with the 4.7 mA/V this row prints at -20 V that leads to 43.7 mA, not 40',
  ],
  [
    'EL34 push-pull distributed load, 430 V supply, cathode bias (per valve)',
    'the fixed-bias row at 425/416 V and -38 V prints 30 mA; by its µ of 10.5 this row is 1 V of grid away ' +
      'and prints 62.5 mA. The resistor or the current is recalled wrongly',
  ],
  [
    '12AT7 100 V, -1 V',
    'the US row on 270 ohm (-1.0 V) prints 3.7 mA at the same voltage, this one 3.0; the US one is recalled more surely',
  ],
])
