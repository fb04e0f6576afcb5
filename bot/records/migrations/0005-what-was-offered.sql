-- Of an answer from before it was kept what it rests on, nothing is given again, neither what it left out nor what it offered: a chat that is direct now
-- may have been a room of more when it was said.
UPDATE conversations SET rest = '[]', choices = '[]' WHERE seen = '[]';
-- What was tried on the asker's own car is the asker's.
UPDATE conversations SET trial = NULL
WHERE trial IS NOT NULL AND (trial ->> 'car') NOT IN (SELECT id FROM cars WHERE owner = conversations.asker);
