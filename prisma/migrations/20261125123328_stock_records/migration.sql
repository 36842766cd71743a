-- AlterTable
ALTER TABLE "Fitting" ADD COLUMN "hours" REAL;

-- CreateTable
CREATE TABLE "TubeSet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "TubePhoto" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tubeId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "format" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "addedAt" DATETIME NOT NULL,
    "addedBy" TEXT NOT NULL,
    CONSTRAINT "TubePhoto_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TubeLot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "designation" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "cost" INTEGER,
    "price" INTEGER NOT NULL,
    "location" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Part" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "value" TEXT NOT NULL DEFAULT '',
    "count" INTEGER NOT NULL,
    "cost" INTEGER,
    "price" INTEGER NOT NULL,
    "reorderLevel" INTEGER,
    "location" TEXT NOT NULL DEFAULT '',
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Import" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fileName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "person" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "rows" INTEGER NOT NULL,
    "taken" INTEGER NOT NULL,
    "refused" INTEGER NOT NULL,
    "undoneAt" DATETIME
);

-- CreateTable
CREATE TABLE "ImportMapping" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "columns" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "TestSheet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "designation" TEXT NOT NULL,
    "instrumentName" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "plateVolts" REAL,
    "screenVolts" REAL,
    "gridVolts" REAL,
    "sections" INTEGER NOT NULL DEFAULT 1,
    "condition" TEXT NOT NULL,
    "location" TEXT NOT NULL DEFAULT '',
    "price" INTEGER NOT NULL,
    "cost" INTEGER,
    "startedAt" DATETIME NOT NULL,
    "startedBy" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "LabelSheet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "pageWidth" REAL NOT NULL,
    "pageHeight" REAL NOT NULL,
    "rows" INTEGER NOT NULL,
    "columns" INTEGER NOT NULL,
    "marginLeft" REAL NOT NULL,
    "marginTop" REAL NOT NULL,
    "labelWidth" REAL NOT NULL,
    "labelHeight" REAL NOT NULL,
    "gapAcross" REAL NOT NULL DEFAULT 0,
    "gapDown" REAL NOT NULL DEFAULT 0,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Tube" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "mark" TEXT NOT NULL,
    "designation" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "acquired" TEXT NOT NULL DEFAULT '',
    "construction" TEXT NOT NULL DEFAULT '',
    "location" TEXT NOT NULL DEFAULT '',
    "cost" INTEGER,
    "price" INTEGER NOT NULL,
    "whereabouts" TEXT NOT NULL,
    "hold" TEXT NOT NULL DEFAULT '',
    "heldForJob" TEXT,
    "heldByQuoteId" TEXT,
    "heldUntil" DATETIME,
    "used" TEXT NOT NULL DEFAULT '',
    "cosmetics" TEXT NOT NULL DEFAULT '',
    "box" TEXT NOT NULL DEFAULT '',
    "bulbShape" TEXT NOT NULL DEFAULT '',
    "glass" TEXT NOT NULL DEFAULT '',
    "plates" TEXT NOT NULL DEFAULT '',
    "baseLook" TEXT NOT NULL DEFAULT '',
    "printColour" TEXT NOT NULL DEFAULT '',
    "getters" TEXT NOT NULL DEFAULT '',
    "micas" TEXT NOT NULL DEFAULT '',
    "codes" TEXT NOT NULL DEFAULT '',
    "labelText" TEXT NOT NULL DEFAULT '',
    "warranty" TEXT NOT NULL DEFAULT '',
    "warrantyUntil" TEXT,
    "hoursBefore" REAL,
    "reference" BOOLEAN NOT NULL DEFAULT false,
    "setId" TEXT,
    "importId" TEXT,
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Tube_setId_fkey" FOREIGN KEY ("setId") REFERENCES "TubeSet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Tube_importId_fkey" FOREIGN KEY ("importId") REFERENCES "Import" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Tube" ("acquired", "condition", "construction", "cost", "createdAt", "designation", "family", "heldByQuoteId", "heldForJob", "heldUntil", "hold", "id", "location", "mark", "price", "search", "version", "whereabouts") SELECT "acquired", "condition", "construction", "cost", "createdAt", "designation", "family", "heldByQuoteId", "heldForJob", "heldUntil", "hold", "id", "location", "mark", "price", "search", "version", "whereabouts" FROM "Tube";
DROP TABLE "Tube";
ALTER TABLE "new_Tube" RENAME TO "Tube";
CREATE UNIQUE INDEX "Tube_mark_key" ON "Tube"("mark");
CREATE INDEX "Tube_family_whereabouts_idx" ON "Tube"("family", "whereabouts");
CREATE INDEX "Tube_heldByQuoteId_idx" ON "Tube"("heldByQuoteId");
CREATE INDEX "Tube_setId_idx" ON "Tube"("setId");
CREATE INDEX "Tube_importId_idx" ON "Tube"("importId");
CREATE TABLE "new_TubeTest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tubeId" TEXT NOT NULL,
    "testedAt" DATETIME NOT NULL,
    "testedBy" TEXT NOT NULL,
    "instrumentName" TEXT NOT NULL,
    "calibratedOn" TEXT,
    "plateVolts" REAL,
    "screenVolts" REAL,
    "gridVolts" REAL,
    "section" INTEGER NOT NULL DEFAULT 1,
    "plateAmps" REAL,
    "screenAmps" REAL,
    "gmSiemens" REAL,
    "shorts" BOOLEAN NOT NULL DEFAULT false,
    "leakage" TEXT NOT NULL DEFAULT '',
    "gas" TEXT NOT NULL DEFAULT '',
    "noise" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "sheetId" TEXT,
    CONSTRAINT "TubeTest_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "TubeTest_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "TestSheet" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_TubeTest" ("calibratedOn", "gas", "gmSiemens", "gridVolts", "id", "instrumentName", "leakage", "noise", "note", "plateAmps", "plateVolts", "screenAmps", "screenVolts", "section", "shorts", "testedAt", "testedBy", "tubeId") SELECT "calibratedOn", "gas", "gmSiemens", "gridVolts", "id", "instrumentName", "leakage", "noise", "note", "plateAmps", "plateVolts", "screenAmps", "screenVolts", "section", "shorts", "testedAt", "testedBy", "tubeId" FROM "TubeTest";
DROP TABLE "TubeTest";
ALTER TABLE "new_TubeTest" RENAME TO "TubeTest";
CREATE INDEX "TubeTest_tubeId_testedAt_idx" ON "TubeTest"("tubeId", "testedAt");
CREATE INDEX "TubeTest_sheetId_idx" ON "TubeTest"("sheetId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "TubeSet_key_key" ON "TubeSet"("key");

-- CreateIndex
CREATE INDEX "TubePhoto_tubeId_idx" ON "TubePhoto"("tubeId");

-- CreateIndex
CREATE INDEX "TestSheet_startedAt_idx" ON "TestSheet"("startedAt");
