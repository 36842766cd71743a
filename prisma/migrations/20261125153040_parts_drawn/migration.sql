-- CreateTable
CREATE TABLE "PartDraw" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "partId" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "by" TEXT NOT NULL,
    CONSTRAINT "PartDraw_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PartDraw_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_QuoteLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "quoteId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "thousandths" INTEGER NOT NULL,
    "unitPrice" INTEGER NOT NULL,
    "unit" TEXT NOT NULL DEFAULT '',
    "taxable" BOOLEAN NOT NULL DEFAULT true,
    "tubeId" TEXT,
    "socketPosition" TEXT,
    "partId" TEXT,
    "doneAt" DATETIME,
    "doneBy" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "QuoteLine_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "Quote" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "QuoteLine_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "QuoteLine_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_QuoteLine" ("doneAt", "doneBy", "id", "kind", "place", "quoteId", "socketPosition", "taxable", "text", "thousandths", "tubeId", "unit", "unitPrice") SELECT "doneAt", "doneBy", "id", "kind", "place", "quoteId", "socketPosition", "taxable", "text", "thousandths", "tubeId", "unit", "unitPrice" FROM "QuoteLine";
DROP TABLE "QuoteLine";
ALTER TABLE "new_QuoteLine" RENAME TO "QuoteLine";
CREATE INDEX "QuoteLine_tubeId_idx" ON "QuoteLine"("tubeId");
CREATE INDEX "QuoteLine_partId_idx" ON "QuoteLine"("partId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "PartDraw_jobId_idx" ON "PartDraw"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "PartDraw_partId_jobId_key" ON "PartDraw"("partId", "jobId");
