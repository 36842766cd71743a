/** A shop of usual windows that knows the handbook and nothing beside. */
import { NEW_SHOP_DEFAULTS } from '@/lib/domain/shop/shop'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

export const BENCH_SHOP = { ...NEW_SHOP_DEFAULTS, ...HANDBOOK_ONLY }
