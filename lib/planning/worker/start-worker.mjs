/** The thread's first file: Node 20 takes no TypeScript for it, even where a loader is given to the thread. */
import { register } from 'tsx/esm/api'

register()
await import('./planning-worker.ts')
