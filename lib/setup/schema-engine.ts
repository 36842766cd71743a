/**
 * The schema engine as WebAssembly: the same program that `prisma migrate` runs as a native
 * binary, without the download. Its package expects a bundler to load the .wasm; here it is
 * instantiated by hand, once per process.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import { bindMigrationAwareSqlAdapterFactory, type SqlDriverAdapter } from '@prisma/driver-adapter-utils'
import type { SchemaEngine } from '@prisma/schema-engine-wasm'

type Binding = { readonly SchemaEngine: typeof SchemaEngine; readonly __wbg_set_wasm: (exports: unknown) => void }

let loaded: Promise<Binding> | undefined

function loadEngine(): Promise<Binding> {
  loaded ??= instantiate()
  return loaded
}

async function instantiate(): Promise<Binding> {
  const binding = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as unknown as Binding
  const folder = dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg'))
  const bytes = readFileSync(join(folder, 'schema_engine_bg.wasm'))
  const imports = { './schema_engine_bg.js': binding as unknown as WebAssembly.ModuleImports }
  const { instance } = await WebAssembly.instantiate(bytes, imports)
  // The engine reports its own crash through this before the call fails.
  Object.assign(globalThis, { PRISMA_WASM_PANIC_REGISTRY: { set_message() {} } })
  binding.__wbg_set_wasm(instance.exports)
  ;(instance.exports.__wbindgen_start as () => void)()
  return binding
}

/** Opens the engine on one database file, or on none (`:memory:`) when only schemas are compared. */
export async function withSchemaEngine<T>(
  path: string,
  datamodels: [string, string][],
  work: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  const { SchemaEngine } = await loadEngine()
  const opened: SqlDriverAdapter[] = []
  const factory = new PrismaBetterSqlite3({ url: path === ':memory:' ? path : `file:${path}` })
  // The engine leaves its connections open, so each is kept to be closed here.
  const remembering = (connect: () => Promise<SqlDriverAdapter>) => async () => {
    const adapter = await connect()
    opened.push(adapter)
    return adapter
  }
  const adapter = bindMigrationAwareSqlAdapterFactory({
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: remembering(() => factory.connect()),
    connectToShadowDb: remembering(() => factory.connectToShadowDb()),
  })
  const engine = await SchemaEngine.new({ datamodels }, () => {}, adapter)
  try {
    return await work(engine)
  } finally {
    engine.free()
    await Promise.all(opened.map((connection) => connection.dispose()))
  }
}
