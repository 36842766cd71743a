-- CreateIndex
CREATE INDEX "Tube_reference_idx" ON "Tube"("reference");
