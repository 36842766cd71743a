import { walkExchange } from './exchange'

walkExchange({ javaScriptEnabled: true })
