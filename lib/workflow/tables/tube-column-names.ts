/** What a column of a list can mean, for the screen that asks for it. */
export { TUBE_COLUMN_NAMES, type TubeColumn } from '@/lib/exchange/tube-columns'
