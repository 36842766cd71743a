/** Points of one round that lie so close together on a drawing that they share one name tag. */
import type { PlotPoint } from './frame'
import type { OperatingPoint, When } from './operating-point'

export type PointCluster = {
  /** Where its first point stands. */
  readonly at: PlotPoint
  readonly when: When | null
  readonly sockets: readonly string[]
}

/** `apart` is the distance of two places on the drawing, `near` what still shares a tag. */
export function pointClusters(
  points: readonly OperatingPoint[],
  apart: (one: PlotPoint, other: PlotPoint) => number,
  near: number,
): PointCluster[] {
  const found: PointCluster[] = []
  for (const { at, socket, when } of points) {
    const index = found.findIndex((one) => one.when === when && apart(one.at, at) < near)
    const cluster = found[index]
    if (cluster) found[index] = { ...cluster, sockets: [...cluster.sockets, socket] }
    else found.push({ at, when, sockets: [socket] })
  }
  return found
}
