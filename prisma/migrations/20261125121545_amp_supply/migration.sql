-- CreateTable
CREATE TABLE "AmpSupply" (
    "ampId" TEXT NOT NULL PRIMARY KEY,
    "openSupplyVolts" REAL,
    "sourceOhms" REAL,
    "rectifierType" TEXT,
    "reservoirMicrofarads" REAL,
    "screenFeed" TEXT,
    "ultralinearTapPercent" REAL,
    "screenDropperOhms" REAL,
    "gridSupplyVolts" REAL,
    "gridColdestVolts" REAL,
    "gridHottestVolts" REAL,
    "gridLeakOhms" REAL,
    "heaterWindingVolts" REAL,
    "heaterWindingAmps" REAL,
    "dischargeOhms" REAL,
    CONSTRAINT "AmpSupply_ampId_fkey" FOREIGN KEY ("ampId") REFERENCES "Amp" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
