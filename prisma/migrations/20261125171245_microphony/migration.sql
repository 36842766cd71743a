-- AlterTable
ALTER TABLE "TubeTest" ADD COLUMN "microphony" TEXT;
