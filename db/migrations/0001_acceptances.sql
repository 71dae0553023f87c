ALTER TABLE `booking` ADD `accepted_on` text;--> statement-breakpoint
ALTER TABLE `booking` ADD `accepted_by` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `booking` ADD `order_number` text DEFAULT '' NOT NULL;