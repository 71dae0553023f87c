ALTER TABLE `return_count` ADD `cause` text DEFAULT 'not known' NOT NULL;--> statement-breakpoint
ALTER TABLE `return_count` ADD `cause_words` text DEFAULT '' NOT NULL;