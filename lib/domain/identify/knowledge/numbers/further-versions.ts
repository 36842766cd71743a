/**
 * Versions that the handbook does not list on their own: made to the suffix rules, from memory.
 * Numbers the handbook knows as other numbers of a type (6V6GT/G, 5R4WGY, 6005 …) come from there.
 */
export type FurtherVersion = { readonly designation: string; readonly typeId: string; readonly of: string }

const of = (typeId: string, plain: string, designations: readonly string[]): FurtherVersion[] =>
  designations.map((designation) => ({ designation, typeId, of: plain }))

export const FURTHER_VERSIONS: readonly FurtherVersion[] = [
  ...of('6V6', '6V6GT', ['6V6GTY']),
  ...of('6L6', '6L6GA', ['6L6GAY']),
  ...of('6L6', '6L6WGB', ['6L6WGA', '6L6WGC']),
  ...of('6SN7GTB', '6SN7GT', ['6SN7W', '6SN7WGT']),
  ...of('6SN7GTB', '6SN7GTA', ['6SN7WGTA']),
  ...of('6SL7GT', '6SL7GT', ['6SL7WGT']),
  ...of('6J5', '6J5GT', ['6J5GT/G', '6J5WGT']),
  ...of('12AX7', '12AX7', ['12AX7W', '12AX7WA']),
  ...of('12AT7', '12AT7', ['12AT7WA', '12AT7WB']),
  ...of('12AU7', '12AU7', ['12AU7WA']),
]

/** Octal types registered as metal: without a suffix they name the metal version. From memory. */
export const REGISTERED_AS_METAL: readonly string[] = ['6V6', '6L6', '6F6', '6J5', '6SC7']
