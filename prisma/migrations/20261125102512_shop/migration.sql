-- CreateTable
CREATE TABLE "Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "address" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "currency" TEXT NOT NULL,
    "taxName" TEXT NOT NULL,
    "taxMilliPercent" INTEGER NOT NULL,
    "mainsVolts" REAL NOT NULL,
    "timeZone" TEXT NOT NULL,
    "paper" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "hourlyRate" INTEGER NOT NULL DEFAULT 0,
    "depositPercent" INTEGER NOT NULL DEFAULT 0,
    "quoteValidDays" INTEGER NOT NULL DEFAULT 21,
    "warrantyDays" INTEGER NOT NULL DEFAULT 90,
    "recheckDays" INTEGER NOT NULL DEFAULT 42,
    "testAgeDays" INTEGER NOT NULL DEFAULT 365,
    "receiptTerms" TEXT NOT NULL DEFAULT '',
    "warrantyTerms" TEXT NOT NULL DEFAULT '',
    "idleFixedLow" INTEGER NOT NULL DEFAULT 60,
    "idleFixedHigh" INTEGER NOT NULL DEFAULT 70,
    "idleCathodeLow" INTEGER NOT NULL DEFAULT 80,
    "idleCathodeHigh" INTEGER NOT NULL DEFAULT 100,
    "idleSingleLow" INTEGER NOT NULL DEFAULT 80,
    "idleSingleHigh" INTEGER NOT NULL DEFAULT 100,
    "earthBondMaxOhms" REAL NOT NULL DEFAULT 0.3,
    "insulationMinOhms" REAL NOT NULL DEFAULT 1000000,
    "leakageMaxAmps" REAL NOT NULL DEFAULT 0.0035,
    "soakMinMinutes" INTEGER NOT NULL DEFAULT 60,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Counter" (
    "name" TEXT NOT NULL PRIMARY KEY,
    "next" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "signInName" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "keepsShop" BOOLEAN NOT NULL DEFAULT false,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "passwordHash" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "SignInSession" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" DATETIME NOT NULL,
    CONSTRAINT "SignInSession_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SignInFailure" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "at" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Customer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL DEFAULT '',
    "preferredContact" TEXT NOT NULL DEFAULT 'phone',
    "note" TEXT NOT NULL DEFAULT '',
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Amp" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "customerId" TEXT NOT NULL,
    "make" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "serial" TEXT NOT NULL DEFAULT '',
    "mainsVolts" REAL NOT NULL,
    "protectionClass" TEXT NOT NULL,
    "fuse" TEXT NOT NULL DEFAULT '',
    "outputClass" TEXT NOT NULL DEFAULT 'push-pull',
    "plateLoadOhms" REAL,
    "note" TEXT NOT NULL DEFAULT '',
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Amp_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Socket" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "ampId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "position" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "typeFitted" TEXT NOT NULL DEFAULT '',
    "markFitted" TEXT NOT NULL DEFAULT '',
    "matchGroup" TEXT NOT NULL DEFAULT '',
    "biasKind" TEXT NOT NULL DEFAULT '',
    "side" TEXT NOT NULL DEFAULT '',
    "cathodeOhms" REAL,
    "cathodeSharedBy" INTEGER NOT NULL DEFAULT 1,
    "senseOhms" REAL,
    "screenOhms" REAL,
    "halfPrimaryOhms" REAL,
    "halfSharedBy" INTEGER NOT NULL DEFAULT 1,
    "across" REAL,
    "depth" REAL,
    CONSTRAINT "Socket_ampId_fkey" FOREIGN KEY ("ampId") REFERENCES "Amp" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "ampId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "fault" TEXT NOT NULL,
    "faultSettings" TEXT NOT NULL DEFAULT '',
    "spendingLimit" INTEGER,
    "promisedOn" TEXT,
    "oldPartsBack" BOOLEAN NOT NULL DEFAULT false,
    "takenInById" TEXT NOT NULL,
    "takenInBy" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "stateSince" DATETIME NOT NULL,
    "findings" TEXT NOT NULL DEFAULT '',
    "collectedBy" TEXT NOT NULL DEFAULT '',
    "collectedIdentity" TEXT NOT NULL DEFAULT '',
    "collectedAt" DATETIME,
    "declinedWork" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Job_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_ampId_fkey" FOREIGN KEY ("ampId") REFERENCES "Amp" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobItem" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "count" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "returned" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "JobItem_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Instrument" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "calibratedOn" TEXT,
    "accuracyPercent" REAL NOT NULL DEFAULT 0.5,
    "accuracyCounts" REAL NOT NULL DEFAULT 2,
    "displayCounts" INTEGER NOT NULL DEFAULT 6000,
    "inputOhms" REAL NOT NULL DEFAULT 10000000,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "ReadingSet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "takenAt" DATETIME NOT NULL,
    "takenBy" TEXT NOT NULL,
    "instrumentId" TEXT NOT NULL,
    "wallVolts" REAL NOT NULL,
    "warmupMinutes" REAL NOT NULL,
    "signalState" TEXT NOT NULL,
    "resistorTolerancePercent" REAL NOT NULL DEFAULT 1,
    "copperWarmingCelsius" REAL NOT NULL DEFAULT 15,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ReadingSet_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ReadingSet_instrumentId_fkey" FOREIGN KEY ("instrumentId") REFERENCES "Instrument" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "setId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "plateVolts" REAL,
    "cathodeVolts" REAL,
    "screenVolts" REAL,
    "gridVolts" REAL,
    "senseDropVolts" REAL,
    "halfDropVolts" REAL,
    "screenDropVolts" REAL,
    CONSTRAINT "Reading_setId_fkey" FOREIGN KEY ("setId") REFERENCES "ReadingSet" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Reading_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "Socket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Tube" (
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
    "search" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "TubeTest" (
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
    CONSTRAINT "TubeTest_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Fitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "socketId" TEXT NOT NULL,
    "tubeId" TEXT,
    "jobId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "fittedAt" DATETIME NOT NULL,
    "fittedBy" TEXT NOT NULL,
    "removedAt" DATETIME,
    CONSTRAINT "Fitting_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "Socket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Fitting_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Fitting_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Operation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "milliHours" INTEGER,
    "flatPrice" INTEGER,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "place" INTEGER NOT NULL DEFAULT 0
);

-- CreateTable
CREATE TABLE "Quote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "validUntil" TEXT NOT NULL,
    "taxName" TEXT NOT NULL,
    "taxMilliPercent" INTEGER NOT NULL,
    "depositPercent" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "matchFacts" JSONB,
    "sentAt" DATETIME,
    "answeredAt" DATETIME,
    "answer" TEXT NOT NULL DEFAULT '',
    "answerHow" TEXT NOT NULL DEFAULT '',
    "answerBy" TEXT NOT NULL DEFAULT '',
    "answerTakenBy" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Quote_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "QuoteLine" (
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
    "doneAt" DATETIME,
    "doneBy" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "QuoteLine_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "Quote" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "QuoteLine_tubeId_fkey" FOREIGN KEY ("tubeId") REFERENCES "Tube" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SafetyLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "check" TEXT NOT NULL,
    "outcome" TEXT NOT NULL DEFAULT '',
    "value" REAL,
    "valueText" TEXT NOT NULL DEFAULT '',
    "limitText" TEXT NOT NULL DEFAULT '',
    "instrument" TEXT NOT NULL DEFAULT '',
    "calibratedOn" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',
    "signedBy" TEXT NOT NULL DEFAULT '',
    "signedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "SafetyLine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Payment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "amount" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "how" TEXT NOT NULL DEFAULT '',
    "at" DATETIME NOT NULL,
    "takenBy" TEXT NOT NULL,
    CONSTRAINT "Payment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Paper" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "view" JSONB NOT NULL,
    "issuedAt" DATETIME NOT NULL,
    "issuedBy" TEXT NOT NULL,
    CONSTRAINT "Paper_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Mail" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT,
    "paperId" TEXT,
    "to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "lastError" TEXT NOT NULL DEFAULT '',
    "createdAt" DATETIME NOT NULL,
    "sentAt" DATETIME,
    CONSTRAINT "Mail_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Mail_paperId_fkey" FOREIGN KEY ("paperId") REFERENCES "Paper" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "HistoryEntry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL,
    "person" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "jobId" TEXT,
    "did" TEXT NOT NULL,
    "changes" JSONB NOT NULL,
    "version" INTEGER
);

-- CreateIndex
CREATE UNIQUE INDEX "Person_signInName_key" ON "Person"("signInName");

-- CreateIndex
CREATE INDEX "SignInSession_expiresAt_idx" ON "SignInSession"("expiresAt");

-- CreateIndex
CREATE INDEX "SignInFailure_key_at_idx" ON "SignInFailure"("key", "at");

-- CreateIndex
CREATE INDEX "Amp_search_idx" ON "Amp"("search");

-- CreateIndex
CREATE UNIQUE INDEX "Socket_ampId_position_key" ON "Socket"("ampId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE INDEX "Job_state_idx" ON "Job"("state");

-- CreateIndex
CREATE INDEX "Job_ampId_idx" ON "Job"("ampId");

-- CreateIndex
CREATE INDEX "ReadingSet_jobId_phase_idx" ON "ReadingSet"("jobId", "phase");

-- CreateIndex
CREATE UNIQUE INDEX "Reading_setId_socketId_key" ON "Reading"("setId", "socketId");

-- CreateIndex
CREATE UNIQUE INDEX "Tube_mark_key" ON "Tube"("mark");

-- CreateIndex
CREATE INDEX "Tube_family_whereabouts_idx" ON "Tube"("family", "whereabouts");

-- CreateIndex
CREATE INDEX "Tube_heldByQuoteId_idx" ON "Tube"("heldByQuoteId");

-- CreateIndex
CREATE INDEX "TubeTest_tubeId_testedAt_idx" ON "TubeTest"("tubeId", "testedAt");

-- CreateIndex
CREATE INDEX "Quote_jobId_idx" ON "Quote"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "Quote_number_revision_key" ON "Quote"("number", "revision");

-- CreateIndex
CREATE INDEX "QuoteLine_tubeId_idx" ON "QuoteLine"("tubeId");

-- CreateIndex
CREATE UNIQUE INDEX "SafetyLine_jobId_check_key" ON "SafetyLine"("jobId", "check");

-- CreateIndex
CREATE INDEX "Paper_jobId_kind_idx" ON "Paper"("jobId", "kind");

-- CreateIndex
CREATE INDEX "Mail_state_idx" ON "Mail"("state");

-- CreateIndex
CREATE INDEX "HistoryEntry_subject_subjectId_version_idx" ON "HistoryEntry"("subject", "subjectId", "version");

-- CreateIndex
CREATE INDEX "HistoryEntry_jobId_at_idx" ON "HistoryEntry"("jobId", "at");
