-- 1 if whoever fitted it went on without their PIN. Worked out again from the feeds.
ALTER TABLE lock_on ADD COLUMN no_pin INTEGER NOT NULL DEFAULT 0;
UPDATE job SET seen = 0;
