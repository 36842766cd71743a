-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Paper" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "view" JSONB NOT NULL,
    "issuedAt" DATETIME NOT NULL,
    "issuedBy" TEXT NOT NULL,
    "takenBackAt" DATETIME,
    "takenBackBecause" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Paper_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Paper" ("id", "issuedAt", "issuedBy", "jobId", "kind", "number", "view") SELECT "id", "issuedAt", "issuedBy", "jobId", "kind", "number", "view" FROM "Paper";
DROP TABLE "Paper";
ALTER TABLE "new_Paper" RENAME TO "Paper";
CREATE INDEX "Paper_jobId_kind_idx" ON "Paper"("jobId", "kind");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
