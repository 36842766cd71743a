import { walkExchange } from './exchange'

walkExchange({ javaScriptEnabled: false })
