-- Version 3: which link of the site's supply network a lock is on. No journal of version 2 knows of any.
ALTER TABLE lock ADD COLUMN switch TEXT;
ALTER TABLE lock ADD COLUMN site BLOB;
