-- CreateTable
CREATE TABLE "Maker" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "sourceCodes" TEXT NOT NULL DEFAULT '',
    "janLetters" TEXT NOT NULL DEFAULT '',
    "factoryMarks" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateIndex
CREATE UNIQUE INDEX "Maker_key_key" ON "Maker"("key");
