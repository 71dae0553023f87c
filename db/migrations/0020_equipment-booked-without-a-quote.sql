ALTER TABLE `booking` ADD `purpose` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `booking` ADD `customer_id` integer REFERENCES customer(id);