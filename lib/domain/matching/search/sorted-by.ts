const FEW = 32

/** In place: by key, then number; by number alone without keys. Short lists without calling back. */
export function sortedBy(members: number[], keys: Float64Array | null): void {
  if (members.length > FEW) {
    members.sort((a, b) => (keys ? (keys[a] as number) - (keys[b] as number) : 0) || a - b)
    return
  }
  for (let at = 1; at < members.length; at += 1) {
    const member = members[at] as number
    let to = at
    for (; to > 0 && comesBefore(member, members[to - 1] as number, keys); to -= 1) {
      members[to] = members[to - 1] as number
    }
    members[to] = member
  }
}

function comesBefore(a: number, b: number, keys: Float64Array | null): boolean {
  if (keys === null) return a < b
  const order = (keys[a] as number) - (keys[b] as number)
  return order < 0 || (order === 0 && a < b)
}
