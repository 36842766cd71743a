-- CreateTable
CREATE TABLE "OwnType" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "designation" TEXT NOT NULL,
    "facts" JSONB NOT NULL,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateIndex
CREATE UNIQUE INDEX "OwnType_key_key" ON "OwnType"("key");
