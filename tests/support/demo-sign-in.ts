export type DemoSignIn = { readonly role: string; readonly signInName: string; readonly passPhrase: string }

/**
 * Reads who may sign in from the text the demo shop leaves for the greeting of `npm start`.
 * One line a person: `technician  tess / copper kettle lamp`; other lines are for the reader.
 */
export function demoSignIns(text: string): readonly DemoSignIn[] {
  const found = text.split('\n').flatMap((line) => {
    const [, role, signInName, passPhrase] = /^\s*([\w-]+)\s+(\S+) \/ (.*\S)\s*$/.exec(line) ?? []
    return role && signInName && passPhrase ? [{ role, signInName, passPhrase }] : []
  })
  if (found.length === 0) throw new Error(`Nobody may sign in, says the demo shop:\n${text}`)
  return found
}

export function demoSignIn(text: string, role = 'technician'): DemoSignIn {
  const person = demoSignIns(text).find((each) => each.role === role)
  if (!person) throw new Error(`The demo shop has no ${role}:\n${text}`)
  return person
}
