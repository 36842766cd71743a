-- AlterTable
ALTER TABLE "Import" ADD COLUMN "order" JSONB;
